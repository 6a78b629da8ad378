using System.Buffers;
using System.Globalization;
using System.Text.Json;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using Google.Protobuf.Reflection;

namespace FleetTrend.Api.Json;

/// <summary>
/// Holds JSON against a message of the contract, and writes it in the one form that the transcoder reads. Every form of ProtoJSON is
/// taken: both names of a field, numbers as texts, enums as numbers, null as absent. What the contract does not have is refused by its path,
/// with the nearest name that it has.
/// </summary>
internal sealed class JsonMessageReader
{
    // An answer lists fewer; more would only fill the memory of the server.
    private const int MostRefusals = 100;

    /// <summary>For writers: what is refused halfway leaves JSON that is none, and that nobody reads.</summary>
    public static readonly JsonWriterOptions Unchecked = new() { SkipValidation = true };

    private readonly List<Refusal> found = [];
    private readonly Dictionary<int, IReadOnlyList<Refusal>> unread = [];

    /// <summary>Broken rules; with any, what was written counts for nothing.</summary>
    public IReadOnlyList<Refusal> Refusals => found;

    /// <summary>Records of the batch that are refused by themselves.</summary>
    public IReadOnlyDictionary<int, IReadOnlyList<Refusal>> Unread => unread;

    /// <summary>Reads the body of a call.</summary>
    public void ReadBody(JsonCall call, JsonElement body, Utf8JsonWriter writer)
    {
        if (body.ValueKind == JsonValueKind.Object)
            ReadFields(call.Body, body, call.BodyPath, writer, call);
        else
            Mismatch(call.BodyPath.TrimEnd('.') is { Length: > 0 } path ? path : "body", body, ObjectRule(call.Body));
    }

    private void ReadMessage(MessageDescriptor message, JsonElement element, string path, Utf8JsonWriter writer)
    {
        if (element.ValueKind == JsonValueKind.Object)
            ReadFields(message, element, path.Length == 0 ? "" : path + ".", writer, null);
        else
            Mismatch(path, element, message == Google.Type.Date.Descriptor ? DateRule(element) : ObjectRule(message));
    }

    private void ReadFields(MessageDescriptor message, JsonElement element, string prefix, Utf8JsonWriter writer, JsonCall? root)
    {
        writer.WriteStartObject();
        var given = new HashSet<FieldDescriptor>();
        var chosen = new Dictionary<OneofDescriptor, FieldDescriptor>();
        foreach (var property in element.EnumerateObject())
        {
            if (found.Count >= MostRefusals)
                break;
            var name = NameOf(property);
            if (JsonCall.Find(message, name) is not { } field)
                RefuseUnknown(message, name, prefix, root);
            else if (!given.Add(field))
                Refuse(prefix + field.Name, name, Reasons.FieldTwice, "must be given once, by one of its names");
            else if (root?.PathFields.Contains(field) == true)
                Refuse(field.Name, TextOf(property.Value) ?? "", Reasons.FieldNotAllowed, "must be left out of the body: it stands in the path of this call");
            else if (property.Value.ValueKind != JsonValueKind.Null && IsAlone(field, chosen, prefix))
                ReadField(field, property.Value, prefix + field.Name, writer, root);
        }

        writer.WriteEndObject();
    }

    private void ReadField(FieldDescriptor field, JsonElement value, string path, Utf8JsonWriter writer, JsonCall? root)
    {
        writer.WritePropertyName(field.JsonName);
        if (!field.IsRepeated)
            ReadOne(field, value, path, writer);
        else if (value.ValueKind != JsonValueKind.Array)
            Mismatch(path, value, "must be a list in square brackets");
        else if (root is not null && field.FieldType == FieldType.Message && field.MessageType == Record.Descriptor)
            ReadRecords(value, path, writer);
        else
            ReadItems(field, value, path, writer);
    }

    private void ReadItems(FieldDescriptor field, JsonElement list, string path, Utf8JsonWriter writer)
    {
        writer.WriteStartArray();
        foreach (var (index, item) in list.EnumerateArray().Index())
        {
            if (found.Count >= MostRefusals)
                break;
            ReadOne(field, item, string.Create(CultureInfo.InvariantCulture, $"{path}[{index}]"), writer);
        }

        writer.WriteEndArray();
    }

    private void ReadOne(FieldDescriptor field, JsonElement value, string path, Utf8JsonWriter writer)
    {
        if (!Scalar.Holds(field))
        {
            ReadMessage(field.MessageType, value, path, writer);
            return;
        }

        var form = value.ValueKind == JsonValueKind.String ? ScalarForm.Quoted : ScalarForm.Bare;
        var text = value.ValueKind is JsonValueKind.Object or JsonValueKind.Array or JsonValueKind.Null ? null : TextOf(value);
        if (text is not null && Scalar.Read(field, text, form) is { } read)
            JsonSerializer.Serialize(writer, read);
        else
            Mismatch(path, value, Scalar.RuleOf(field), Scalar.ReasonOf(field), text is null ? null : Scalar.Nearest(field, text));
    }

    /// <summary>Records of a batch: one that cannot be read is refused by itself.</summary>
    private void ReadRecords(JsonElement list, string path, Utf8JsonWriter writer)
    {
        var count = list.GetArrayLength();
        if (count > RecordIntake.MaxRecords)
        {
            RefuseBare(path, $"{count}", Reasons.TooManyItems, $"must be a list of 1 to {RecordIntake.MaxRecords:#,0} records");
            writer.WriteNullValue();
            return;
        }

        var buffer = new ArrayBufferWriter<byte>();
        using var one = new Utf8JsonWriter(buffer, Unchecked);
        writer.WriteStartArray();
        foreach (var (index, item) in list.EnumerateArray().Index())
        {
            var refusals = ReadApart(item, buffer, one, item.ValueKind == JsonValueKind.Object ? "" : $"{path}[{index}]");
            if (refusals.Count > 0)
            {
                unread.Add(index, refusals);
                using var key = KeyOf(item);
                if (key is null || ReadApart(key.RootElement, buffer, one, "").Count > 0)
                    WriteEmpty(buffer, one);
            }

            writer.WriteRawValue(buffer.WrittenSpan, skipInputValidation: true);
        }

        writer.WriteEndArray();
    }

    private static IReadOnlyList<Refusal> ReadApart(JsonElement record, ArrayBufferWriter<byte> buffer, Utf8JsonWriter writer, string path)
    {
        buffer.ResetWrittenCount();
        writer.Reset();
        var reader = new JsonMessageReader();
        reader.ReadMessage(Record.Descriptor, record, path, writer);
        writer.Flush();
        return reader.Refusals;
    }

    /// <summary>A record with the key of another and nothing else; null where it has none, or more than one.</summary>
    private static JsonDocument? KeyOf(JsonElement record)
    {
        if (record.ValueKind != JsonValueKind.Object)
            return null;
        var keys = record.EnumerateObject().Where(property => property.NameEquals("key")).Take(2).ToList();
        return keys is [{ Value.ValueKind: JsonValueKind.Object } key]
            ? JsonSerializer.SerializeToDocument(new Dictionary<string, JsonElement>(StringComparer.Ordinal) { ["key"] = key.Value })
            : null;
    }

    private static void WriteEmpty(ArrayBufferWriter<byte> buffer, Utf8JsonWriter writer)
    {
        buffer.ResetWrittenCount();
        writer.Reset();
        writer.WriteStartObject();
        writer.WriteEndObject();
        writer.Flush();
    }

    private bool IsAlone(FieldDescriptor field, Dictionary<OneofDescriptor, FieldDescriptor> chosen, string prefix)
    {
        if (field.RealContainingOneof is not { } oneof || chosen.TryAdd(oneof, field))
            return true;
        RefuseBare(
            prefix + field.Name, $"{chosen[oneof].Name} and {field.Name}", Reasons.FieldNotAllowed,
            $"must be the only one of {string.Join(", ", oneof.Fields.Select(f => f.Name))}");
        return false;
    }

    private void RefuseUnknown(MessageDescriptor message, string name, string prefix, JsonCall? root)
    {
        var field = root?.BodyField is null ? null : JsonCall.Find(root.Input, name);
        if (field is null)
        {
            var of = prefix.Length > 0 ? prefix.TrimEnd('.') : message == Record.Descriptor ? "the record" : "the request";
            Refuse(
                prefix + name, name, Reasons.FieldUnknown, $"must be the name of a field of {of}",
                NearestName.Find(name, message.Fields.InDeclarationOrder().Select(f => f.Name)));
        }
        else if (field == root!.BodyField)
        {
            Refuse(prefix + name, name, Reasons.FieldUnknown, $"must be left out: the body is the {field.Name.Replace('_', ' ')} itself, with nothing around it");
        }
        else
        {
            Refuse(prefix + name, name, Reasons.FieldUnknown, $"must stand in the query, as in ?{field.Name}={ExampleOf(field)}: the body of this call is the {root.BodyField!.Name.Replace('_', ' ')}");
        }
    }

    private static string ExampleOf(FieldDescriptor field) => field.FieldType == FieldType.Bool ? "true" : "...";

    private void Mismatch(string path, JsonElement value, string rule, Reason? reason = null, string? nearest = null)
    {
        var refusal = value.ValueKind switch
        {
            JsonValueKind.String => new Refusal(path, TextOf(value) ?? "", reason ?? Reasons.TypeMismatch, rule) { Nearest = nearest },
            JsonValueKind.Object => new Refusal(path, "an object", reason ?? Reasons.TypeMismatch, rule) { IsBare = true },
            JsonValueKind.Array => new Refusal(path, "a list", reason ?? Reasons.TypeMismatch, rule) { IsBare = true },
            _ => new Refusal(path, value.GetRawText(), reason ?? Reasons.TypeMismatch, rule) { IsBare = true, Nearest = nearest },
        };
        found.Add(refusal);
    }

    private void Refuse(string path, string value, Reason reason, string rule, string? nearest = null) =>
        found.Add(new Refusal(path, value, reason, rule) { Nearest = nearest });

    private void RefuseBare(string path, string value, Reason reason, string rule) =>
        found.Add(new Refusal(path, value, reason, rule) { IsBare = true });

    private static string ObjectRule(MessageDescriptor message) =>
        $"must be an object {{{string.Join(", ", message.Fields.InDeclarationOrder().Select(f => f.Name))}}}";

    /// <summary>What a date must be; where one was written as a text, with its own numbers.</summary>
    private static string DateRule(JsonElement value) =>
        value.ValueKind == JsonValueKind.String
        && DateOnly.TryParseExact(TextOf(value), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? $$"""must be {year, month, day}, as in {"year": {{day.Year}}, "month": {{day.Month}}, "day": {{day.Day}}}"""
            : """must be {year, month, day}, as in {"year": 2026, "month": 2, "day": 3}""";

    /// <summary>The text of a value; null where it is no text that Unicode has, such as half of a pair.</summary>
    private static string? TextOf(JsonElement value)
    {
        if (value.ValueKind != JsonValueKind.String)
            return value.GetRawText();
        try
        {
            return value.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static string NameOf(JsonProperty property)
    {
        try
        {
            return property.Name;
        }
        catch (InvalidOperationException)
        {
            return "\uFFFD";
        }
    }
}

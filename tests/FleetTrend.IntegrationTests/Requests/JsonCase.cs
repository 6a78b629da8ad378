using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using FleetTrend.IntegrationTests.Access;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;

namespace FleetTrend.IntegrationTests.Requests;

/// <summary>A request as JSON over HTTP: path, query and body by the annotation of its call. A test changes one thing in it.</summary>
internal sealed class JsonCase
{
    private readonly HttpMethod verb;
    private readonly string path;
    private readonly string? bodyField;

    public JsonCase(MethodDescriptor call, IMessage request)
    {
        Call = call;
        var (verb, _, body) = Contract.HttpOf(call)!.Value;
        (this.verb, bodyField) = (verb, body);
        var template = Contract.TemplateOf(call);
        var json = JsonNode.Parse(JsonFormatter.Default.Format(request))!.AsObject();
        foreach (var field in call.InputType.Fields.InDeclarationOrder())
        {
            if (!template.Contains($"{{{field.Name}}}", StringComparison.Ordinal))
                continue;
            InPath.Add(field);
            template = template.Replace($"{{{field.Name}}}", $"{json[field.JsonName] ?? "1"}", StringComparison.Ordinal);
            json.Remove(field.JsonName);
        }

        path = template[1..];
        if (body == "*")
        {
            Body = json;
            return;
        }

        foreach (var (name, value) in json)
        {
            var field = call.InputType.Fields.InDeclarationOrder().Single(f => f.JsonName == name);
            if (field.Name == body)
                Body = value!.DeepClone();
            else
                Query.Add(field.Name, $"{value}");
        }
    }

    public MethodDescriptor Call { get; }

    public List<FieldDescriptor> InPath { get; } = [];

    public Dictionary<string, string> Query { get; } = new(StringComparer.Ordinal);

    /// <summary>Null where the call has none.</summary>
    public JsonNode? Body { get; }

    /// <summary>What the body is.</summary>
    public MessageDescriptor BodyType => bodyField is null or "*" ? Call.InputType : Call.InputType.FindFieldByName(bodyField).MessageType;

    /// <summary>Fields that stand in the query.</summary>
    public IEnumerable<FieldDescriptor> Parameters => bodyField == "*" ? []
        : Call.InputType.Fields.InDeclarationOrder().Where(f => f.Name != bodyField && !InPath.Contains(f));

    /// <summary>Every object within the body, with the path that refusals write for it: those of a record begin at the record.</summary>
    public IEnumerable<Place> Places() => Body is null ? []
        : PlacesIn(BodyType, Body.AsObject(), bodyField is "*" || BodyType == Record.Descriptor ? "" : bodyField + ".", []);

    /// <summary>Sends the request with another body or another query.</summary>
    public async Task<JsonAnswer> SendAsync(HttpClient http, JsonNode? body = null, string? query = null)
    {
        query ??= string.Join('&', Query.Select(pair => $"{pair.Key}={Uri.EscapeDataString(pair.Value)}"));
        using var message = new HttpRequestMessage(verb, query.Length > 0 ? $"{path}?{query}" : path);
        if ((body ?? Body) is { } sent)
            message.Content = new StringContent(sent.ToJsonString(), Encoding.UTF8, "application/json");
        using var response = await http.SendAsync(message);
        return JsonAnswer.Read(response.StatusCode, await response.Content.ReadFromJsonAsync<JsonNode>());
    }

    private static IEnumerable<Place> PlacesIn(
        MessageDescriptor message, JsonObject at, string path, IReadOnlyList<object> steps, bool isOfRetraction = false)
    {
        isOfRetraction |= message == Record.Descriptor && at["retraction"] is not null;
        yield return new Place(message, message == Record.Descriptor ? "" : path, steps, isOfRetraction);
        foreach (var field in message.Fields.InDeclarationOrder().Where(f => f.FieldType == FieldType.Message && f.MessageType != Timestamp.Descriptor))
        {
            var inner = message == Record.Descriptor ? field.Name : path + field.Name;
            var found = at[field.JsonName] switch
            {
                JsonObject one => PlacesIn(field.MessageType, one, inner + ".", [.. steps, field.JsonName], isOfRetraction),
                JsonArray { Count: > 0 } list => PlacesIn(field.MessageType, list[0]!.AsObject(), $"{inner}[0].", [.. steps, field.JsonName, 0], isOfRetraction),
                _ => [],
            };
            foreach (var place in found)
                yield return place;
        }
    }

    /// <summary>An object within a body.</summary>
    /// <param name="Message">What it is.</param>
    /// <param name="Path">Path of its fields, as refusals write it.</param>
    /// <param name="Steps">The way to it from the body.</param>
    /// <param name="IsOfRetraction">Whether it stands in a record that takes another back.</param>
    internal sealed record Place(MessageDescriptor Message, string Path, IReadOnlyList<object> Steps, bool IsOfRetraction)
    {
        /// <summary>A body in which this object is changed.</summary>
        public JsonNode In(JsonNode body, Action<JsonObject> change)
        {
            var changed = body.DeepClone();
            var at = changed;
            foreach (var step in Steps)
                at = step is int index ? at[index]! : at[(string)step]!;
            change(at.AsObject());
            return changed;
        }
    }
}

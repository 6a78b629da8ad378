using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using FleetTrend.Intake;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Protobuf.WellKnownTypes;

namespace FleetTrend.Api.Json;

/// <summary>Single values in every form that ProtoJSON takes: a number or its text, an enum by name or number.</summary>
internal static partial class Scalar
{
    private const int MostDigits = 400;

    /// <summary>Whether a field holds one of these; else it holds an object.</summary>
    public static bool Holds(FieldDescriptor field) => field.FieldType != FieldType.Message || field.MessageType == Timestamp.Descriptor;

    /// <summary>The value in the form that the transcoder reads, or null where the text has not the form of the field.</summary>
    /// <param name="field">The field; it holds a scalar.</param>
    /// <param name="text">The text.</param>
    /// <param name="form">How it is written.</param>
    public static object? Read(FieldDescriptor field, string text, ScalarForm form) => field.FieldType switch
    {
        FieldType.String => form == ScalarForm.Bare ? null : text,
        FieldType.Bool => form == ScalarForm.Quoted ? null : text switch { "true" => true, "false" => false, _ => null },
        FieldType.Int32 => Whole(text, int.MinValue, int.MaxValue),
        FieldType.Int64 => Whole(text, long.MinValue, long.MaxValue),
        FieldType.Double => Number(text, form),
        FieldType.Enum => Choice(field.EnumType, text, form),
        FieldType.Message => form != ScalarForm.Bare && IsTime(text) ? text : null,
        _ => throw new NotSupportedException($"{field.FullName} is a {field.FieldType}, which no request had so far."),
    };

    /// <summary>What a value of the field must be.</summary>
    public static string RuleOf(FieldDescriptor field) => field.FieldType switch
    {
        FieldType.String => "must be a text in quotes",
        FieldType.Bool => "must be true or false",
        FieldType.Int32 => "must be a whole number from -2,147,483,648 to 2,147,483,647",
        FieldType.Int64 => "must be a whole number of up to 63 bits",
        FieldType.Double => "must be a number",
        FieldType.Enum => $"must be one of {string.Join(", ", field.EnumType.Values.Where(v => v.Number != 0).Select(v => v.Name))}",
        FieldType.Message => "must be a time such as \"2026-02-03T10:15:00Z\"",
        _ => throw new NotSupportedException($"{field.FullName} is a {field.FieldType}, which no request had so far."),
    };

    /// <summary>Why a value of the field is refused.</summary>
    public static Reason ReasonOf(FieldDescriptor field) => field.FieldType == FieldType.Enum ? Reasons.EnumUnknown : Reasons.TypeMismatch;

    /// <summary>The right value that is nearest to a wrong one; null where there is none.</summary>
    public static string? Nearest(FieldDescriptor field, string text) => field.FieldType == FieldType.Enum
        ? NearestName.Find(text, field.EnumType.Values.Where(v => v.Number != 0).Select(v => v.Name))
        : null;

    private static long? Whole(string text, long least, long most) =>
        IsNumber(text) && decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
        && number == decimal.Truncate(number) && number >= least && number <= most
            ? (long)number
            : null;

    // Where a number is not finite the rules of the field say so, as they do over gRPC.
    private static object? Number(string text, ScalarForm form) => text switch
    {
        "NaN" or "Infinity" or "-Infinity" when form != ScalarForm.Bare => text,
        _ when IsNumber(text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture) is var number && double.IsFinite(number)
            ? number
            : null,
        _ => null,
    };

    private static object? Choice(EnumDescriptor type, string text, ScalarForm form)
    {
        if (form != ScalarForm.Bare && type.FindValueByName(text) is { } named)
            return named.Name;
        return form != ScalarForm.Quoted && Whole(text, int.MinValue, int.MaxValue) is long number
            ? type.FindValueByNumber((int)number)?.Name ?? (object)number
            : null;
    }

    private static bool IsTime(string text)
    {
        try
        {
            return Timestamp.Parser.ParseJson(JsonSerializer.Serialize(text)) is not null;
        }
        catch (InvalidProtocolBufferException)
        {
            return false;
        }
    }

    private static bool IsNumber(string text) => text.Length <= MostDigits && JsonNumber.IsMatch(text);

    [GeneratedRegex(@"\A-?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][+-]?[0-9]+)?\z", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1_000)]
    private static partial Regex JsonNumber { get; }
}

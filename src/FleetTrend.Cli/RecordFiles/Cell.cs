using System.Globalization;
using FleetTrend.Intake;
using Google.Protobuf.Reflection;
using Date = Google.Type.Date;

namespace FleetTrend.Cli.RecordFiles;

/// <summary>A field of the contract as the text of a cell, both ways.</summary>
internal static class Cell
{
    private const string DateForm = "yyyy-MM-dd";

    /// <summary>What a cell must hold.</summary>
    public static string Form(FieldDescriptor field) => field.FieldType switch
    {
        FieldType.Double => "number, with a point for decimals",
        FieldType.Int32 => "whole number",
        FieldType.Bool => "true or false",
        FieldType.Enum => string.Join(", ", Words(field)),
        FieldType.Message => "date, YYYY-MM-DD",
        _ => "text",
    };

    /// <summary>The same as the rule of a refusal.</summary>
    public static string Rule(FieldDescriptor field) => field.FieldType switch
    {
        FieldType.Double => "must be a number with a point for decimals",
        FieldType.Int32 => "must be a whole number",
        FieldType.Bool => "must be true or false",
        FieldType.Enum => $"must be one of {string.Join(", ", Words(field))}",
        _ => "must be a date such as 2026-02-03",
    };

    /// <summary>The word that is nearest to a wrong one; null where there is none.</summary>
    public static string? Nearest(FieldDescriptor field, string text) =>
        field.FieldType == FieldType.Enum ? NearestName.Find(text, Words(field)) : null;

    /// <summary>The field's value; null where the text has not its form.</summary>
    public static object? Read(FieldDescriptor field, string text) => field.FieldType switch
    {
        FieldType.Double => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null,
        FieldType.Int32 => int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole) ? whole : null,
        FieldType.Bool => bool.TryParse(text, out var yes) ? yes : null,
        FieldType.Enum => field.EnumType.Values.Skip(1).FirstOrDefault(v => Word(field, v).Equals(text, StringComparison.OrdinalIgnoreCase))?.Number,
        FieldType.String => FormulaGuard.Off(text),
        FieldType.Message => DateOnly.TryParseExact(text, DateForm, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? new Date { Year = day.Year, Month = day.Month, Day = day.Day }
            : null,
        _ => text,
    };

    /// <summary>The text of a field's value; empty where it is not told.</summary>
    public static string Write(FieldDescriptor field, Google.Protobuf.IMessage message)
    {
        if (field.HasPresence && !field.Accessor.HasValue(message))
            return "";
        return field.Accessor.GetValue(message) switch
        {
            double number => number.ToString("R", CultureInfo.InvariantCulture),
            string text => FormulaGuard.On(text),
            bool yes => yes ? "true" : "false",
            Date day => $"{day.Year:0000}-{day.Month:00}-{day.Day:00}",
            Enum chosen => Chosen(field, Convert.ToInt32(chosen, CultureInfo.InvariantCulture)),
            var other => Convert.ToString(other, CultureInfo.InvariantCulture) ?? "",
        };
    }

    /// <summary>CONDITION_LEAK_TRACE is leak-trace: every value begins with the name of its enum.</summary>
    public static string Word(FieldDescriptor field, EnumValueDescriptor value)
    {
        var unspecified = field.EnumType.Values[0].Name;
        var prefix = unspecified.Length - "UNSPECIFIED".Length;
        return value.Name[prefix..].ToLowerInvariant().Replace('_', '-');
    }

    private static string Chosen(FieldDescriptor field, int number) =>
        number == 0 ? "" : Word(field, field.EnumType.FindValueByNumber(number));

    private static IEnumerable<string> Words(FieldDescriptor field) => field.EnumType.Values.Skip(1).Select(v => Word(field, v));
}

using System.Globalization;
using System.Text.RegularExpressions;
using FleetTrend.Cli.RecordFiles;
using Google.Protobuf.Reflection;

namespace FleetTrend.Cli.Import;

/// <summary>What the server says, in the words of the files: <c>leak-trace</c> where the contract writes <c>CONDITION_LEAK_TRACE</c>, and a day
/// as a cell holds it.</summary>
internal static partial class FileWords
{
    private static readonly Dictionary<string, string> ByContract = FileSet.All
        .SelectMany(form => form.Columns)
        .Select(column => column.Field)
        .OfType<FieldDescriptor>()
        .Where(field => field.FieldType == FieldType.Enum)
        .DistinctBy(field => field.EnumType.FullName, StringComparer.Ordinal)
        .SelectMany(field => field.EnumType.Values.Skip(1).Select(value => (value.Name, Word: Cell.Word(field, value))))
        .ToDictionary(pair => pair.Name, pair => pair.Word, StringComparer.Ordinal);

    /// <summary>A refusal of the server as a person at a file reads it.</summary>
    public static string Translate(string text) =>
        JsonDay().Replace(ContractName().Replace(text, name => ByContract.GetValueOrDefault(name.Value, name.Value)), day => DayOf(day));

    private static string DayOf(Match day) => string.Create(CultureInfo.InvariantCulture,
        $"{day.Groups["year"].Value}-{day.Groups["month"].Value.PadLeft(2, '0')}-{day.Groups["day"].Value.PadLeft(2, '0')}");

    [GeneratedRegex("[A-Z]+(_[A-Z]+)+", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1_000)]
    private static partial Regex ContractName();

    [GeneratedRegex(
        @"\{""year"": (?<year>\d+), ""month"": (?<month>\d+), ""day"": (?<day>\d+)\}", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1_000)]
    private static partial Regex JsonDay();
}

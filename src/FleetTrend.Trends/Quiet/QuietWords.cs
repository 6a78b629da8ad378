using FleetTrend.Records.Words;

namespace FleetTrend.Trends.Quiet;

/// <summary>How a question about what is too quiet reads: what was found, beside its like, then the question.</summary>
public static class QuietWords
{
    private const int MostNames = 3;

    /// <summary>How often the first question comes about an ordinary aircraft, by CALLS.md.</summary>
    public const string HowSure = "An ordinary aircraft brings the question about few findings less than once in 50 years of its own.";

    internal static string FewFindings(Quietness quiet)
    {
        var inHours = quiet.Hours is { } hours ? $" in {NumberWords.Hours(hours)}" : string.Empty;
        var (who, own) = quiet.Registration is { } aircraft ? (aircraft, "Is it") : ($"{quiet.TypeGroup} at {quiet.Base}", "Are these aircraft");
        var looked = quiet.Registration is null ? "are they" : "is it";
        return $"{who}: {Findings(quiet.Found)}{inHours} since {NumberWords.Day(quiet.SinceDate!.Value)}; the others would have had "
            + $"{NumberWords.Rounded(quiet.Expected)} in the same looks. {own} in good order, {looked} looked at less closely, or are findings not written down?";
    }

    internal static IEnumerable<string> NotExamined(Quietness quiet)
    {
        var never = quiet.Unexamined.Where(l => l.LastLookDate is null).ToList();
        if (never.Count > 0)
            yield return $"{Who(quiet)} never examined: {Names(never)}, in {Span(never)}. {Others(quiet, never)} {Question(never)}";
        foreach (var since in quiet.Unexamined.Where(l => l.LastLookDate is not null).GroupBy(l => l.LastLookDate!.Value).OrderBy(g => g.Key))
        {
            List<UnexaminedLocation> places = [.. since];
            yield return $"{Who(quiet)} not examined since {NumberWords.Day(since.Key)}: {Names(places)}, in {Span(places)}. {Others(quiet, places)} {Question(places)}";
        }
    }

    private static string Findings(int found) => found == 0 ? "no finding" : NumberWords.Count(found, "finding", "findings");

    private static string Who(Quietness quiet) => quiet.Registration is { } aircraft ? $"{aircraft}:" : $"{quiet.TypeGroup} at {quiet.Base}:";

    private static string Names(List<UnexaminedLocation> places) => LocationWords.List([.. places.Select(p => p.Location)], MostNames);

    private static string Span(List<UnexaminedLocation> places) =>
        $"{NumberWords.Hours(places[0].Hours)} and {NumberWords.Count(places[0].InspectionCount, "inspection", "inspections")}";

    private static string Others(Quietness quiet, List<UnexaminedLocation> places)
    {
        var fewest = places.MinBy(p => p.OthersExamined)!;
        var which = quiet.Registration is null ? "aircraft elsewhere" : "others";
        return $"{NumberWords.Count(fewest.OthersExamined)} of {NumberWords.Count(fewest.OthersCount)} {which} are examined there.";
    }

    private static string Question(List<UnexaminedLocation> places) => places.Count == 1
        ? "Can it not be reached, or is it looked at and not written down?"
        : "Can they not be reached, or are they looked at and not written down?";
}

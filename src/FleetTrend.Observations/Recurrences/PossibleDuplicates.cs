using System.Globalization;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Observations.Timelines;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;
using FleetTrend.Records.Texts;
using FleetTrend.Records.Words;

namespace FleetTrend.Observations.Recurrences;

/// <summary>Findings of two sources that may be one event; offered for a person to merge, never merged here.</summary>
/// <remarks>
/// Of several cracks that both sources tell at one place, each is offered with the nearest in days, then in size, then in hours,
/// so that a finding stands in one pair per other source. What was merged already is not offered again.
/// </remarks>
internal static class PossibleDuplicates
{
    // Common practice, no source: a card is entered some days after the look, and a ferry or check flight may lie between.
    private const int MostDays = 3;
    private const long MostTenths = 50;

    public static void List(AircraftRecords records)
    {
        var merged = records.Merges.Select(m => m.Merged.Key).ToHashSet();
        var groups = records.Findings
            .Where(f => f.Content.Grade == FindingGrade.Defect && !merged.Contains(f.Key))
            .GroupBy(f => (f.Content.Location, f.Content.Condition));
        foreach (var group in groups)
        {
            var taken = new HashSet<(RecordKey, string)>();
            foreach (var (one, other) in Pairs([.. group]))
            {
                if (taken.Contains((one.Key, other.Key.Source)) || taken.Contains((other.Key, one.Key.Source)))
                    continue;
                taken.Add((one.Key, other.Key.Source));
                taken.Add((other.Key, one.Key.Source));
                records.List(
                    DataProblemKind.PossibleDuplicate,
                    one.Content.FoundDate > other.Content.FoundDate ? one.Content.FoundDate : other.Content.FoundDate,
                    $"{FirstLetter.Capital(ConditionWords.Name(one.Content.Condition))} at {one.Content.Location}: {Told(one)} and {Told(other)} may be one event. "
                        + "Until somebody merges them each counts by itself.",
                    [one.Key, other.Key]);
            }
        }
    }

    private static IEnumerable<(Recorded<Finding>, Recorded<Finding>)> Pairs(IReadOnlyList<Recorded<Finding>> findings) =>
        findings
            .SelectMany((one, i) => findings.Skip(i + 1)
                .TakeWhile(other => Days(one, other) <= MostDays) // findings come by date
                .Where(other => other.Key.Source != one.Key.Source && Tenths(one, other) <= MostTenths)
                .Select(other => RecordKeyOrder.Instance.Compare(one.Key, other.Key) < 0 ? (one, other) : (one: other, other: one)))
            .OrderBy(p => Days(p.one, p.other))
            .ThenBy(p => SizeGap(p.one, p.other))
            .ThenBy(p => Tenths(p.one, p.other))
            .ThenBy(p => p.one.Key, RecordKeyOrder.Instance)
            .ThenBy(p => p.other.Key, RecordKeyOrder.Instance);

    private static int Days(Recorded<Finding> one, Recorded<Finding> other) =>
        Math.Abs(one.Content.FoundDate.DayNumber - other.Content.FoundDate.DayNumber);

    private static long Tenths(Recorded<Finding> one, Recorded<Finding> other) =>
        Math.Abs(one.Content.TimeInService.Tenths - other.Content.TimeInService.Tenths);

    /// <summary>Millimetres between the two; without both sizes they are as far apart as can be.</summary>
    private static double SizeGap(Recorded<Finding> one, Recorded<Finding> other) =>
        one.Content.SizeMillimetres is { } a && other.Content.SizeMillimetres is { } b ? Math.Abs(a - b) : double.PositiveInfinity;

    private static string Told(Recorded<Finding> finding)
    {
        var f = finding.Content;
        var size = f.SizeMillimetres is { } mm ? string.Create(CultureInfo.InvariantCulture, $", {mm:0.#} mm") : "";
        return $"{finding.Key.Source} {ForeignText.Identifier(finding.Key.SourceRecordId)} of {f.FoundDate:O} ({f.TimeInService} h{size})";
    }
}

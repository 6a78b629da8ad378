using System.Globalization;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Observations.Timelines;
using FleetTrend.Records.Words;

namespace FleetTrend.Observations.Lives;

/// <summary>
/// Installations over parts of which no removal is recorded. A recorded installation renews (rule 5), so the part before it came
/// out; why is not known, so it is right-censored at its last good look (rule 4), and that is listed: once per aircraft and source,
/// with the count and the rows. A shop that records installations only has one line per aircraft and not one per part.
/// </summary>
internal static class InstallationsOverParts
{
    public static void List(AircraftRecords records, IReadOnlyList<InstallationOverPart> found)
    {
        foreach (var bySource in found.GroupBy(f => f.Keys[0].Source, StringComparer.Ordinal))
        {
            var ordered = bySource.OrderBy(f => f.Date).ThenBy(f => f.Location, StringComparer.Ordinal).ToList();
            var recordsRemovals = records.Removals.Any(r => r.Key.Source == bySource.Key);
            var what = ordered.Count == 1
                ? $"An installation at {ordered[0].Location} on {ordered[0].Date:O} over a part whose removal is not recorded; it counts as taken out good."
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"{NumberWords.Count(ordered.Count)} installations from {ordered[0].Date:O} to {ordered[^1].Date:O} over parts whose removal is not recorded; they count as taken out good.");
            records.Problems.Add(new DataProblem(
                DataProblemKind.InstallationMismatch,
                records.Description.Registration,
                ordered[0].Date,
                recordsRemovals ? what : $"{what} {bySource.Key} records no removal of this aircraft.",
                [.. ordered.SelectMany(f => f.Keys).Distinct()])
            {
                Aspect = $"installations over parts, {bySource.Key}",
                Subject = [],
                IsHabit = !recordsRemovals,
            });
        }
    }
}

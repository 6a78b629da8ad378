using FleetTrend.Records.Flags;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Words;
using FleetTrend.Trends.LocationStandings;
using FleetTrend.Trends.PartLives;
using FleetTrend.Trends.Repeats;
using FleetTrend.Trends.Restarts;
using FleetTrend.Trends.Standings;

namespace FleetTrend.Trends.Flags;

/// <summary>What deserves attention by the numbers of all type groups, each thing once.</summary>
public static class ProposedFlags
{
    /// <summary>Flags of a fleet: drifts by strength, then repeats, then bases.</summary>
    /// <param name="candidates">What each type group has, by type group.</param>
    /// <param name="parameters">The choices.</param>
    /// <param name="kinds">Every kind that stands in them, by name.</param>
    /// <param name="closings">The newest closing of each flag.</param>
    public static IReadOnlyList<ProposedFlag> Propose(
        IReadOnlyList<FlagCandidates> candidates, TrendParameters parameters, IReadOnlyDictionary<string, LocationKind> kinds,
        IReadOnlyList<FlagClosing> closings)
    {
        var closedOn = FlagRestarts.Days(closings);
        return [.. Propose(candidates, parameters, kinds).Select(flag => AfterClosing(flag, closedOn))];
    }

    private static List<ProposedFlag> Propose(
        IReadOnlyList<FlagCandidates> candidates, TrendParameters parameters, IReadOnlyDictionary<string, LocationKind> kinds)
    {
        var airframeTests = new TestFamily(candidates.Select(c => c.AirframeTests));
        var locationTests = new TestFamily(candidates.Select(c => c.LocationTests));
        var baseTests = new TestFamily(candidates.Select(c => c.BaseTests));
        // What has left the fleet or its type group can no longer be looked at as such.
        List<LocationStanding> repeats = [.. Analyses.LocationStandings.Order(candidates
            .SelectMany(c => c.Locations.Where(s => c.Flying.Contains(s.Registration, StringComparer.Ordinal)))
            .Select(s => s with { QValue = locationTests.QValue(s.PValue.Value), Comparisons = locationTests.Count })
            .Where(s => IsRepeat(s, parameters)))];
        List<RepeatLocation> runs = [.. Analyses.Repeats.Order(candidates.SelectMany(c => c.Repeats))];
        var runAt = runs.ToDictionary(r => (r.Registration, r.TypeGroup, r.Location, r.Condition));
        var drifts = candidates
            .SelectMany(c => c.Airframes.Where(s => c.Flying.Contains(s.Registration, StringComparer.Ordinal)))
            .Select(s => s with { QValue = airframeTests.QValue(s.PValue.Value) })
            .Where(s => IsDrift(s, parameters))
            .OrderBy(s => s.QValue).ThenBy(s => s.PValue.Value).ThenBy(s => s.Registration, StringComparer.Ordinal).ThenBy(s => s.Condition)
            .Select(s => (Standing: s, Repeats: repeats.Where(r => IsPartOf(r, s)).ToList(), Run: Run(s, runs, parameters)))
            .ToList();
        var named = drifts.SelectMany(d => d.Repeats).ToHashSet(ReferenceEqualityComparer.Instance);
        return
        [
            .. drifts.Select(d => DriftFlag.Propose(d.Standing, d.Repeats, d.Run, kinds, airframeTests.Count)),
            .. repeats.Where(r => !named.Contains(r))
                .Select(r => RepeatFlag.Propose(r, kinds[r.Kind], runAt.GetValueOrDefault((r.Registration, r.TypeGroup, r.Location, r.Condition)))),
            .. candidates.SelectMany(c => c.PartLives)
                .Select(t => t with { Contrast = BaseContrasts.Settle(t.Contrast!, baseTests, parameters) })
                .Where(t => t.Contrast!.IsWorse)
                .OrderBy(t => t.Contrast!.Worst!.QValue).ThenBy(t => t.TypeGroup, StringComparer.Ordinal)
                .ThenBy(t => t.Kind, StringComparer.Ordinal).ThenBy(t => t.Base, StringComparer.Ordinal)
                .Select(t => BaseLifeFlag.Propose(t, kinds[t.Kind], baseTests.Count)),
        ];
    }

    /// <summary>The flag, saying from when on it counts where flags were closed before it.</summary>
    private static ProposedFlag AfterClosing(ProposedFlag flag, Dictionary<string, DateOnly> closedOn)
    {
        if (closedOn.Count == 0)
            return flag;
        var own = closedOn.TryGetValue(flag.Subject, out var day) ? day : (DateOnly?)null;
        if (flag is not { Registration: { } registration, Condition: { } condition })
        {
            return own is { } closed
                ? flag with { CountedAfterDate = closed, Statement = $"{flag.Statement} Counted are parts that went in after {NumberWords.Day(closed)}, when this was last dealt with." }
                : flag;
        }
        var starts = flag.Locations
            .Select(l => (Location: l, Day: FlagRestarts.DayOf(closedOn, registration, l, condition)))
            .Where(s => s.Day is not null)
            .ToList();
        if (starts.Count == 0)
            return flag;
        var said = starts.GroupBy(s => s.Day!.Value).OrderBy(g => g.Key).Select(g => g.Key == own || flag.Kind == FlagKind.RepeatLocation
            ? $"Counted is what came after {NumberWords.Day(g.Key)}, when this was last dealt with."
            : $"At {string.Join(", ", g.Select(s => LocationWords.Name(s.Location)))} only what came after {NumberWords.Day(g.Key)} counts, when that location was last dealt with.");
        return flag with
        {
            CountedAfterDate = flag.Kind == FlagKind.RepeatLocation ? starts[0].Day : own,
            Statement = $"{flag.Statement} {string.Join(' ', said)}",
        };
    }

    private static bool IsDrift(AirframeStanding standing, TrendParameters parameters) =>
        standing.QValue <= parameters.FalseDiscoveryRate
        && standing.Observed >= parameters.MinimumEventsForDrift
        && standing.Observed > standing.Expected;

    /// <summary>A count of returns alone is no sign: in a large fleet some place has them by chance.</summary>
    private static bool IsRepeat(LocationStanding standing, TrendParameters parameters) =>
        standing.QValue <= parameters.FalseDiscoveryRate
        && standing.Returns >= parameters.RepeatsForFlag
        && standing.Observed > standing.Expected.Value;

    /// <summary>What came back most since its last renewal at the places that drive a standing, or null.</summary>
    private static RepeatLocation? Run(
        AirframeStanding standing, IReadOnlyList<RepeatLocation> runs, TrendParameters parameters) => runs.FirstOrDefault(r =>
        r.Registration == standing.Registration
        && r.TypeGroup == standing.TypeGroup
        && r.Condition == standing.Condition
        && RepeatAnalysis.Repeats(r) >= parameters.RepeatsForFlag
        && standing.Drivers.Any(d => d.Location == r.Location));

    private static bool IsPartOf(LocationStanding repeat, AirframeStanding standing) =>
        repeat.Registration == standing.Registration
        && repeat.TypeGroup == standing.TypeGroup
        && repeat.Condition == standing.Condition
        && standing.Drivers.Any(d => d.Location == repeat.Location);
}

using FleetTrend.Records.Layouts;
using FleetTrend.Records.Words;
using FleetTrend.Trends.Airframes;
using FleetTrend.Trends.Locations;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.Flags;

/// <summary>What deserves attention by the numbers of a snapshot, each thing once.</summary>
internal static class ProposedFlags
{
    /// <summary>Flags of a snapshot: drifts by strength, then repeats, then bases.</summary>
    /// <param name="snapshot">The trends, with what counts after the restarts.</param>
    /// <param name="kinds">Every kind that stands in them, by name.</param>
    /// <param name="restarts">From when on things count.</param>
    public static IReadOnlyList<ProposedFlag> Of(
        TrendSnapshot snapshot, IReadOnlyDictionary<string, LocationKind> kinds, FlagRestarts restarts) =>
        [.. Of(snapshot, kinds).Select(flag => AfterClosing(flag, restarts))];

    private static List<ProposedFlag> Of(TrendSnapshot snapshot, IReadOnlyDictionary<string, LocationKind> kinds)
    {
        // What has left the fleet or its type group can no longer be looked at as such.
        var groupNow = snapshot.Fleet.Where(l => l.RetiredDate is null)
            .ToDictionary(l => l.Registration, l => l.TypeGroup, StringComparer.Ordinal);
        var repeats = snapshot.LocationStandings
            .Where(s => IsRepeat(s, snapshot.Parameters) && groupNow.GetValueOrDefault(s.Registration) == s.TypeGroup)
            .ToList();
        var runs = snapshot.Repeats.ToDictionary(r => (r.Registration, r.TypeGroup, r.Location, r.Condition));
        var drifts = snapshot.Airframes
            .Where(s => IsDrift(s, snapshot.Parameters) && groupNow.GetValueOrDefault(s.Registration) == s.TypeGroup)
            .OrderBy(s => s.QValue).ThenBy(s => s.PValue.Value).ThenBy(s => s.Registration, StringComparer.Ordinal).ThenBy(s => s.Condition)
            .Select(s => (Standing: s, Repeats: repeats.Where(r => IsPartOf(r, s)).ToList(), Run: Run(s, snapshot)))
            .ToList();
        var named = drifts.SelectMany(d => d.Repeats).ToHashSet(ReferenceEqualityComparer.Instance);
        return
        [
            .. drifts.Select(d => DriftFlag.Of(d.Standing, d.Repeats, d.Run, kinds, snapshot.Airframes.Count)),
            .. repeats.Where(r => !named.Contains(r))
                .Select(r => RepeatFlag.Of(r, kinds[r.Kind], runs.GetValueOrDefault((r.Registration, r.TypeGroup, r.Location, r.Condition)))),
            .. snapshot.PartLives
                .Where(t => t.Contrast is { IsWorse: true })
                .OrderBy(t => t.Contrast!.Worst!.QValue).ThenBy(t => t.TypeGroup, StringComparer.Ordinal)
                .ThenBy(t => t.Kind, StringComparer.Ordinal).ThenBy(t => t.Base, StringComparer.Ordinal)
                .Select(t => BaseLifeFlag.Of(t, kinds[t.Kind], BaseContrasts.Tested(snapshot.PartLives))),
        ];
    }

    /// <summary>The flag, saying from when on it counts where flags were closed before it.</summary>
    private static ProposedFlag AfterClosing(ProposedFlag flag, FlagRestarts restarts)
    {
        if (!restarts.Any)
            return flag;
        if (flag is not { Registration: { } registration, Condition: { } condition })
        {
            return restarts.Of(flag.Subject) is { } closed
                ? flag with { CountedAfterDate = closed, Statement = $"{flag.Statement} Counted are parts that went in after {NumberWords.Day(closed)}, when the flag before was closed." }
                : flag;
        }
        var starts = flag.Locations
            .Select(l => (Location: l, Day: restarts.Of(registration, l, condition)?.Day))
            .Where(s => s.Day is not null)
            .ToList();
        if (starts.Count == 0)
            return flag;
        var own = restarts.Of(flag.Subject);
        var said = starts.GroupBy(s => s.Day!.Value).OrderBy(g => g.Key).Select(g => g.Key == own || flag.Kind == FlagKind.RepeatLocation
            ? $"Counted is what came after {NumberWords.Day(g.Key)}, when the flag before was closed."
            : $"At {string.Join(", ", g.Select(s => LocationWords.Name(s.Location)))} only what came after {NumberWords.Day(g.Key)} counts, when the flag of that location was closed.");
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
    private static RepeatLocation? Run(AirframeStanding standing, TrendSnapshot snapshot) => snapshot.Repeats.FirstOrDefault(r =>
        r.Registration == standing.Registration
        && r.TypeGroup == standing.TypeGroup
        && r.Condition == standing.Condition
        && RepeatLocations.Repeats(r) >= snapshot.Parameters.RepeatsForFlag
        && standing.Drivers.Any(d => d.Location == r.Location));

    private static bool IsPartOf(LocationStanding repeat, AirframeStanding standing) =>
        repeat.Registration == standing.Registration
        && repeat.TypeGroup == standing.TypeGroup
        && repeat.Condition == standing.Condition
        && standing.Drivers.Any(d => d.Location == repeat.Location);
}

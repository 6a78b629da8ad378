using FleetTrend.Trends.Airframes;
using FleetTrend.Trends.Locations;

namespace FleetTrend.Trends.Flags;

/// <summary>What deserves attention by the numbers of a snapshot, each thing once.</summary>
internal static class ProposedFlags
{
    /// <summary>Flags of a snapshot: drifts by strength, then repeats, then bases.</summary>
    public static IReadOnlyList<ProposedFlag> Of(TrendSnapshot snapshot)
    {
        // What has left the fleet or its type group can no longer be looked at as such.
        var groupNow = snapshot.Fleet.Where(l => l.RetiredDate is null)
            .ToDictionary(l => l.Registration, l => l.TypeGroup, StringComparer.Ordinal);
        var repeats = snapshot.Repeats
            .Where(r => groupNow.GetValueOrDefault(r.Registration) == r.TypeGroup && RepeatLocations.Repeats(r) >= snapshot.Parameters.RepeatsForFlag)
            .ToList();
        var drifts = snapshot.Airframes
            .Where(s => IsDrift(s, snapshot.Parameters) && groupNow.GetValueOrDefault(s.Registration) == s.TypeGroup)
            .OrderBy(s => s.QValue).ThenBy(s => s.PValue).ThenBy(s => s.Registration, StringComparer.Ordinal).ThenBy(s => s.Condition)
            .Select(s => (Standing: s, Repeats: repeats.Where(r => IsPartOf(r, s)).ToList()))
            .ToList();
        var named = drifts.SelectMany(d => d.Repeats).ToHashSet(ReferenceEqualityComparer.Instance);
        return
        [
            .. drifts.Select(d => DriftFlag.Of(d.Standing, d.Repeats, snapshot)),
            .. repeats.Where(r => !named.Contains(r)).Select(RepeatFlag.Of),
            .. snapshot.PartLives
                .Where(t => t.Contrast is { } c && c.QValue <= snapshot.Parameters.FalseDiscoveryRate && IsShorter(c.MedianRatio))
                .OrderBy(t => t.Contrast!.QValue).ThenBy(t => t.TypeGroup, StringComparer.Ordinal)
                .ThenBy(t => t.Kind, StringComparer.Ordinal).ThenBy(t => t.Base, StringComparer.Ordinal)
                .Select(BaseLifeFlag.Of),
        ];
    }

    private static bool IsDrift(AirframeStanding standing, TrendParameters parameters) =>
        standing.QValue <= parameters.FalseDiscoveryRate
        && standing.Observed >= parameters.MinimumEventsForDrift
        && standing.Observed > standing.Expected;

    /// <summary>The test also answers to a different shape; a flag that says "less long" needs the whole interval below one.</summary>
    private static bool IsShorter(Figure medianRatio) => medianRatio.Value < 1 && medianRatio.Upper < 1;

    private static bool IsPartOf(RepeatLocation repeat, AirframeStanding standing) =>
        repeat.Registration == standing.Registration
        && repeat.Condition == standing.Condition
        && standing.Drivers.Any(d => d.Location == repeat.Location);
}

using FleetTrend.Observations.Lives;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Trends.PartLives;

/// <summary>The lives that take part in a fit, like ones counted together and in order, so that order of arrival means nothing.</summary>
internal sealed record FittedLives
{
    private FittedLives(List<ObservedLife> observed)
    {
        Count = observed.Count;
        Failures = observed.Count(l => l.FirstBad is not null);
        LateEntries = observed.Count(l => l.Entry.Tenths > 0);
        WatchedByAircraft = [.. observed
            .GroupBy(l => l.Registration, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => (g.Count(l => l.FirstBad is not null), g.Sum(l => ((l.FirstBad ?? l.LastGood) - l.Entry).Tenths)))];
        FollowedFrom = observed.Count == 0 ? null : observed.Min(l => l.Entry).Value;
        FollowedTo = observed.Count == 0 ? null : observed.Max(l => l.FirstBad ?? l.LastGood).Value;
        Lives = Together(observed.Select(l => l.ForFit()).OfType<Life>());
        Aircraft = [.. observed
            .GroupBy(l => l.Registration, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => Together(g.Select(l => l.ForFit()).OfType<Life>()))];
        FirstFailureAfter = Failures == 0 ? null : observed.Where(l => l.FirstBad is not null).Min(l => l.LastGood.Value);
        OldestAge = Count == 0 ? 0 : observed.Max(l => (l.FirstBad ?? l.LastGood).Value);
    }

    /// <summary>The lives, for statistics.</summary>
    public IReadOnlyList<Life> Lives { get; }

    /// <summary>The same by aircraft: parts of one aircraft are not independent of one another.</summary>
    public IReadOnlyList<IReadOnlyList<Life>> Aircraft { get; }

    /// <summary>How many.</summary>
    public int Count { get; }

    /// <summary>Failures among them.</summary>
    public int Failures { get; }

    /// <summary>Lives that came under observation with part of their age behind them.</summary>
    public int LateEntries { get; }

    /// <summary>By aircraft, failures and hours watched in tenths: from entry to the look that found it bad, or the last good look.</summary>
    public IReadOnlyList<(int Failures, long WatchedTenths)> WatchedByAircraft { get; }

    /// <summary>The age before which nothing failed: the youngest last good look of a failure, hours; null without a failure.</summary>
    public double? FirstFailureAfter { get; }

    /// <summary>The oldest age at which a part was looked at, hours.</summary>
    public double OldestAge { get; }

    /// <summary>Youngest age at which any was followed, hours; null where there is none.</summary>
    public double? FollowedFrom { get; }

    /// <summary>Oldest age at which any was followed, hours: the last good look or the look that found it bad; null where there is none.</summary>
    public double? FollowedTo { get; }

    /// <summary>The same lives, each widened outwards to whole hours: it still failed in (lower, upper], or was good at lower.</summary>
    public IReadOnlyList<Life> InWholeHours() => Together(Lives.Select(l =>
        new Life(Math.Floor(l.Lower), Math.Ceiling(l.Upper), Math.Floor(l.Entry), l.Count)));

    private static Life[] Together(IEnumerable<Life> lives) =>
        [.. lives
            .GroupBy(l => (l.Lower, l.Upper, l.Entry))
            .OrderBy(g => g.Key)
            .Select(g => new Life(g.Key.Lower, g.Key.Upper, g.Key.Entry, g.Sum(l => l.Count)))];

    /// <summary>Those of the lives that are not excluded.</summary>
    public static FittedLives From(IEnumerable<ObservedLife> observed) => new([.. observed.Where(l => l.Exclusion is null)]);
}

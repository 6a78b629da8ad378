using FleetTrend.Records.Actions;
using FleetTrend.Statistics.Lives;
using FleetTrend.Statistics.Rates;

namespace FleetTrend.Trends.Repairs;

/// <summary>Repairs of one kind that are counted together.</summary>
internal sealed record RepairGroup
{
    public RepairGroup(ActionKind action, IReadOnlyList<FollowedRepair> repairs)
    {
        (Action, Repairs) = (action, repairs);
        ByAircraft = repairs.GroupBy(r => r.Registration, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => Together(g.Select(r => r.ForComparison()).OfType<Life>()), StringComparer.Ordinal);
        Lives = [.. ByAircraft.OrderBy(a => a.Key, StringComparer.Ordinal).Select(a => a.Value)];
        CameBack = repairs.Count(r => r.Found is not null);
        Followed = Lives.Sum(u => u.Sum(l => l.Count));
        FollowedHours = repairs.Max(r => (r.Found ?? r.LastGood).Value);
    }

    /// <summary>What was done.</summary>
    public ActionKind Action { get; }

    /// <summary>Each time that it was done.</summary>
    public IReadOnlyList<FollowedRepair> Repairs { get; }

    /// <summary>Those followed, as lives, by aircraft.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<Life>> ByAircraft { get; }

    /// <summary>The same, in the order of the aircraft.</summary>
    public IReadOnlyList<IReadOnlyList<Life>> Lives { get; }

    /// <summary>Repairs after which the condition was found again.</summary>
    public int CameBack { get; }

    /// <summary>Repairs at which somebody has looked since.</summary>
    public int Followed { get; }

    /// <summary>The most flight hours at which one was looked at.</summary>
    public double FollowedHours { get; }

    /// <summary>By aircraft, how many of the repairs that were watched for so long are known to have come back by then.</summary>
    public IReadOnlyList<ClusterCount> KnownBy(double hours) =>
        [.. Repairs.Where(r => r.WatchedAfter.Value >= hours).GroupBy(r => r.Registration, StringComparer.Ordinal)
            .Select(g => new ClusterCount(g.Count(r => r.Found is { } found && found.Value <= hours), g.Count()))];

    private static IReadOnlyList<Life> Together(IEnumerable<Life> lives) =>
        [.. lives.GroupBy(l => (l.Lower, l.Upper)).OrderBy(g => g.Key).Select(g => new Life(g.Key.Lower, g.Key.Upper, count: g.Count()))];
}

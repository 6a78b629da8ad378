using FleetTrend.Records.Actions;

namespace FleetTrend.Trends.Repairs;

/// <summary>One kind of action against a condition at a kind of location: how many, and how many came back.</summary>
public sealed record RepairedAction
{
    /// <summary>What was done.</summary>
    public required ActionKind Action { get; init; }

    /// <summary>How often: once for a condition, a location and a day, however many findings it closed.</summary>
    public required int Repairs { get; init; }

    /// <summary>On how many aircraft.</summary>
    public required int Aircraft { get; init; }

    /// <summary>Repairs at which nobody has looked since in the type group: they tell nothing.</summary>
    public required int NotLookedAt { get; init; }

    /// <summary>Repairs after which the condition was found again, however late.</summary>
    public required int CameBack { get; init; }

    /// <summary>The most flight hours after a repair at which it was looked at; 0 where it never was.</summary>
    public required double FollowedHours { get; init; }

    /// <summary>How many had come back by 100, 200 and 400 flight hours.</summary>
    public required IReadOnlyList<ShareBack> Shares { get; init; }

    /// <summary>How bad these places were: findings of the condition there until the action, the one repaired among them, per 1,000 hours watched
    /// there.</summary>
    public required Figure Before { get; init; }
}

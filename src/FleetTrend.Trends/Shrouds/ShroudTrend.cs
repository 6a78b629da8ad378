namespace FleetTrend.Trends.Shrouds;

/// <summary>Stop-drilled heat shrouds of a type group with the hours to their renewal, and its clamp bolts by the state of their hex.</summary>
public sealed record ShroudTrend
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Shrouds with stop-drilled cracks, renewed ones too.</summary>
    public required int Shrouds { get; init; }

    /// <summary>Those of them that were renewed.</summary>
    public required int Renewed { get; init; }

    /// <summary>Mean number of stop drills at renewal; null where none was renewed.</summary>
    public double? StopDrillsAtRenewal { get; init; }

    /// <summary>Fewest flight hours from the first stop drill to a renewal; null where none was renewed.</summary>
    public double? FewestHours { get; init; }

    /// <summary>Most flight hours from the first stop drill to a renewal; null where none was renewed.</summary>
    public double? MostHours { get; init; }

    /// <summary>Share renewed by 200, 500 and 1,000 flight hours after the first stop drill, those in service now followed until now.</summary>
    public required IReadOnlyList<ShareRenewed> Shares { get; init; }

    /// <summary>Shrouds in service with stop drills, on aircraft that fly, the most drilled first.</summary>
    public required IReadOnlyList<StopDrilledShroud> StopDrilled { get; init; }

    /// <summary>Clamp bolts of aircraft that fly, by state.</summary>
    public required IReadOnlyList<HexCount> Bolts { get; init; }

    /// <summary>Those with something open at them, the worst state first.</summary>
    public required IReadOnlyList<BadBolt> BadBolts { get; init; }
}

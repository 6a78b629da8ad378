namespace FleetTrend.Trends.Positions;

/// <summary>One cylinder or side beside the others of the same aircraft.</summary>
public sealed record PositionLine
{
    /// <summary>Number of the cylinder, or <c>left</c> or <c>right</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Findings there that count in a rate.</summary>
    public required int Findings { get; init; }

    /// <summary>Hours watched there; each location adds its own.</summary>
    public required double ExposureHours { get; init; }

    /// <summary>Aircraft that had a finding there.</summary>
    public required int Aircraft { get; init; }

    /// <summary>Its rate over that of the others on the same aircraft; null where no aircraft tells.</summary>
    public Figure? TimesOthers { get; init; }

    /// <summary>Two-sided chance of a difference at least this large, were the positions of each aircraft alike; null where not tested.</summary>
    public double? PValue { get; init; }

    /// <summary>The same after allowing for every comparison of positions of the fleet (Holm 1979); null where not tested.</summary>
    public double? AdjustedPValue { get; init; }

    /// <summary>What follows.</summary>
    public PositionFinding Finding { get; init; }
}

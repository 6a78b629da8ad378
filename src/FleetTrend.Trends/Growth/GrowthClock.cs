namespace FleetTrend.Trends.Growth;

/// <summary>The growth of a kind of place by one clock: the calendar, or the hours of the aircraft.</summary>
public sealed record GrowthClock
{
    /// <summary>Findings behind it.</summary>
    public required int Events { get; init; }

    /// <summary>Aircraft that had one.</summary>
    public required int Aircraft { get; init; }

    /// <summary>By the calendar how many times as often they come now as two years ago; by hours the exponent of the mean count, one where nothing
    /// changes.</summary>
    public required Figure Growth { get; init; }

    /// <summary>Two-sided chance of a growth at least as far from none, did nothing change; null where not tested.</summary>
    public double? PValue { get; init; }

    /// <summary>The same after allowing for every kind of place and both clocks of the fleet (Holm 1979); null where not tested.</summary>
    public double? AdjustedPValue { get; init; }

    /// <summary>What follows.</summary>
    public GrowthFinding Finding { get; init; }
}

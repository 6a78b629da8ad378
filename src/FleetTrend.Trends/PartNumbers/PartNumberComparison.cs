namespace FleetTrend.Trends.PartNumbers;

/// <summary>Two part numbers of a kind by one measure; the better one by the estimate is first.</summary>
public sealed record PartNumberComparison
{
    /// <summary>The part number that lasts longer, or fails early less often.</summary>
    public required string Better { get; init; }

    /// <summary>The other.</summary>
    public required string Worse { get; init; }

    /// <summary>By what they are compared.</summary>
    public required PartNumberMeasure Measure { get; init; }

    /// <summary>
    /// Of early failures, the age before which a failure is early, hours. Of lives, the age from which they count: above 0 where lives differ no longer
    /// without early failures.
    /// </summary>
    public required double Hours { get; init; }

    /// <summary>How many times as long the better one lasts, or how many times as high the early hazard of the worse one is.</summary>
    public required Figure Times { get; init; }

    /// <summary>Two-sided chance of a difference at least this large, were both alike; null where not tested: so few failures can show nothing.</summary>
    public double? PValue { get; init; }

    /// <summary>The same after allowing for every comparison of part numbers of the fleet (Holm 1979); null where not tested.</summary>
    public double? AdjustedPValue { get; init; }

    /// <summary>What follows.</summary>
    public PartNumberFinding Finding { get; init; }
}

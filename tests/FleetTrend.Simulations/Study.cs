using FleetTrend.Statistics;

namespace FleetTrend.Simulations;

/// <summary>One interval at one size of data, with known truth.</summary>
internal sealed record Study
{
    /// <summary>What the interval is of.</summary>
    public required string Quantity { get; init; }

    /// <summary>Sizes and truth of the simulated data.</summary>
    public required string Setting { get; init; }

    /// <summary>The interval's method.</summary>
    public required string Method { get; init; }

    /// <summary>Share of the stated number of runs that this study makes: below one where a run takes long.</summary>
    public double Share { get; init; } = 1;

    /// <summary>Why it does not reach 93 to 97 percent, and which interval is the better one; null where it does.</summary>
    public string? Reason { get; init; }

    /// <summary>Draws one data set; gives each interval with its truth, or none where the data gave a typed reason.</summary>
    public required Func<Random, IEnumerable<(Interval Interval, double Truth)>> Draw { get; init; }
}

using FleetTrend.Statistics.Norms;

namespace FleetTrend.Statistics.Charts;

/// <summary>One unit on a chart of rates.</summary>
public sealed record UChartPoint
{
    /// <summary>Its index among the units given, from zero.</summary>
    public required int Position { get; init; }

    /// <summary>Its events and exposure.</summary>
    public required CountExposure Unit { get; init; }

    /// <summary>Events per unit of exposure.</summary>
    public double Rate => Unit.Events / Unit.Exposure;

    /// <summary>Lower limit for its exposure, never below zero.</summary>
    public required double LowerLimit { get; init; }

    /// <summary>Upper limit for its exposure.</summary>
    public required double UpperLimit { get; init; }

    /// <summary>Distance from the centre line in Poisson standard deviations.</summary>
    public required double Deviations { get; init; }

    /// <summary>Exact chance of at least as many events at the chart's rate, taken as known.</summary>
    public required double UpperPValue { get; init; }

    /// <summary>As <see cref="UpperPValue"/>, the count seen entering by half.</summary>
    public required double MidUpperPValue { get; init; }

    /// <summary>Whether the rate lies outside the limits.</summary>
    public bool Signals => Rate < LowerLimit || Rate > UpperLimit;
}

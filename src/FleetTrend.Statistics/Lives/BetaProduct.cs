using System.Runtime.InteropServices;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Lives;

/// <summary>A product of independent beta variables, held by its first two moments and read as one beta.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct BetaProduct
{
    public BetaProduct()
    {
    }

    private double Mean { get; init; } = 1;

    private double MeanSquare { get; init; } = 1;

    /// <summary>The product with one more factor, Beta(a, b).</summary>
    internal BetaProduct Times(double a, double b) => new()
    {
        Mean = Mean * a / (a + b),
        MeanSquare = MeanSquare * a * (a + 1) / ((a + b) * (a + b + 1)),
    };

    /// <summary>
    /// Limits of survival: the upper from the product itself, the lower with the further factor Beta(<paramref name="good"/>, 1) for the
    /// failure that may come next.
    /// </summary>
    internal Interval Limits(double good, double confidence)
    {
        var tail = (1 - confidence) / 2;
        return new Interval(good > 0 ? Times(good, 1).Quantile(tail) : 0, Quantile(1 - tail), confidence);
    }

    private double Quantile(double probability)
    {
        var variance = MeanSquare - (Mean * Mean);
        if (variance <= 0) return Mean;
        var size = (Mean * (1 - Mean) / variance) - 1;
        return Beta.InvCDF(Mean * size, (1 - Mean) * size, probability);
    }
}

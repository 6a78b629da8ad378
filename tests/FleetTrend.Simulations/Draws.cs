using MathNet.Numerics.Distributions;

namespace FleetTrend.Simulations;

/// <summary>Random numbers that several studies need.</summary>
internal static class Draws
{
    /// <summary>Between two values.</summary>
    public static double Between(Random random, double low, double high) => low + (high - low) * random.NextDouble();

    /// <summary>A gamma number of mean one: a unit's rate over the mean rate; infinite shape: no difference between units.</summary>
    public static double Frailty(Random random, double shape) =>
        double.IsInfinity(shape) ? 1 : Gamma.Sample(random, shape, shape);

    /// <summary>A Poisson count.</summary>
    public static int Count(Random random, double mean) => mean > 0 ? Poisson.Sample(random, mean) : 0;
}

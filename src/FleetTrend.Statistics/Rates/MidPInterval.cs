using MathNet.Numerics;

namespace FleetTrend.Statistics.Rates;

/// <summary>
/// Limits of the mean of a Poisson count in which the count seen enters each tail by half. Its coverage lies near the
/// confidence on average, where that of <see cref="GarwoodInterval"/> lies above it for small counts; it may fall short of
/// it for single means. For comparing and ranking; where a limit must hold, use the exact one.
/// </summary>
public static class MidPInterval
{
    /// <summary>Two-sided mid-p interval of the mean count; closed at both ends.</summary>
    /// <param name="events">Events counted, zero or more. Zero gives a lower limit of zero.</param>
    /// <param name="confidence">Above 0 and below 1.</param>
    /// <returns>Limits in events.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative count, or confidence outside (0, 1).</exception>
    /// <remarks>Source: Lancaster 1961, J. Am. Stat. Assoc. 56; Cohen and Yang 1994, Biometrical Journal 36 (from memory).</remarks>
    public static Interval Estimate(int events, double confidence = 0.95)
    {
        var exact = GarwoodInterval.Estimate(events, confidence);
        var tail = (1 - confidence) / 2;
        // The mid-p limits lie inside the exact ones, and the count lies between them.
        var lower = events == 0 ? 0 : RootSearch.Find(m => tail - AtLeast(events, m), exact.Lower, events);
        var upper = RootSearch.Find(m => 1 - AtLeast(events, m) - tail, Math.Max(events, 1e-12), exact.Upper);
        return new Interval(lower, upper, confidence);
    }

    /// <summary>Chance of more events than seen and half the chance of as many, at a mean.</summary>
    private static double AtLeast(int events, double mean)
    {
        var same = Math.Exp(events * Math.Log(mean) - mean - SpecialFunctions.GammaLn(events + 1.0));
        return SpecialFunctions.GammaLowerRegularized(events + 1.0, mean) + same / 2;
    }
}

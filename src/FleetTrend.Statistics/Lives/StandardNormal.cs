using MathNet.Numerics;

namespace FleetTrend.Statistics.Lives;

/// <summary>The standard normal distribution of ln t, for the lognormal distribution.</summary>
internal sealed class StandardNormal : TermwiseDistribution
{
    internal static readonly StandardNormal Instance = new();

    private const double HalfLogTwoPi = 0.91893853320467274178;

    internal override DerivativesAt LogDensity(double z) => new(LogPhi(z), -z, -1);

    internal override DerivativesAt LogSurvival(double z)
    {
        var value = LogUpperTail(z);
        var hazard = Math.Exp(LogPhi(z) - value);
        return new DerivativesAt(value, -hazard, -hazard * (hazard - z));
    }

    internal override DerivativesAt LogCdf(double z)
    {
        var mirrored = LogSurvival(-z);
        return mirrored with { First = -mirrored.First };
    }

    internal override double ZOfLogSurvival(double logSurvival)
    {
        // Newton on the log tail, from the leading term of its expansion; the log tail is concave, so it cannot run away.
        var lower = logSurvival < -Constants.Ln2 ? logSurvival : ElementaryFunctions.Log1MExp(-logSurvival);
        if (double.IsNegativeInfinity(lower)) return logSurvival < -1 ? double.PositiveInfinity : double.NegativeInfinity;
        var z = Math.Sqrt(2 * Math.Max(0, -lower - Constants.Ln2));
        for (var i = 0; i < 100; i++)
        {
            var f = LogSurvival(z);
            var step = (f.Value - lower) / f.First;
            z -= step;
            if (Math.Abs(step) <= 1e-15 * Math.Max(1, Math.Abs(z))) break;
        }

        return logSurvival < -Constants.Ln2 ? z : -z;
    }

    internal override IntervalDerivatives LogInterval(double z, double width)
    {
        var middle = z + (width / 2);
        if (width * (1 + Math.Abs(middle)) < 1e-3) return Narrow(middle, width);
        var end = z + width;
        var value = z > 0 ? LogDifference(LogUpperTail(z), LogUpperTail(end))
            : end < 0 ? LogDifference(LogUpperTail(-end), LogUpperTail(-z))
            : ElementaryFunctions.LogP1(-Math.Exp(LogUpperTail(-z)) - Math.Exp(LogUpperTail(end)));
        var start = Math.Exp(LogPhi(z) - value);
        var stop = Math.Exp(LogPhi(end) - value);
        var slope = stop - start;
        return new IntervalDerivatives(
            value,
            slope,
            stop,
            (z * start) - (end * stop) - (slope * slope),
            -stop * (end + slope),
            -stop * (end + stop));
    }

    /// <summary>Density at the middle times width, with the next term of the expansion.</summary>
    private static IntervalDerivatives Narrow(double middle, double width)
    {
        var curve = (middle * middle) - 1;
        var square = width * width;
        return new IntervalDerivatives(
            LogPhi(middle) + Math.Log(width) + (curve * square / 24),
            -middle + (middle * square / 12),
            (-middle / 2) + (1 / width) + (middle * square / 24) + (curve * width / 12),
            -1 + (square / 12),
            -0.5 + (middle * width / 6) + (square / 24),
            -0.25 - (1 / square) + (square / 48) + (middle * width / 6) + (curve / 12));
    }

    private static double LogDifference(double larger, double smaller) =>
        larger + ElementaryFunctions.Log1MExp(larger - smaller);

    private static double LogPhi(double z) => (-z * z / 2) - HalfLogTwoPi;

    private static double LogUpperTail(double z)
    {
        if (z < -1) return ElementaryFunctions.LogP1(-SpecialFunctions.Erfc(-z / Constants.Sqrt2) / 2);
        return z < 5 ? Math.Log(SpecialFunctions.Erfc(z / Constants.Sqrt2) / 2) : LogPhi(z) + Math.Log(MillsRatio(z));
    }

    /// <summary>Survival over density for z of 5 or more, by the continued fraction of Laplace.</summary>
    private static double MillsRatio(double z)
    {
        var fraction = z;
        for (var n = 40; n >= 1; n--) fraction = z + (n / fraction);
        return 1 / fraction;
    }
}

using MathNet.Numerics;

namespace FleetTrend.Statistics.Lives;

/// <summary>A likelihood-ratio test.</summary>
/// <param name="Statistic">Twice the log-likelihood gained by the freer model.</param>
/// <param name="DegreesOfFreedom">Parameters that it has more.</param>
/// <param name="PValue">Chi-square probability of a statistic as large or larger when the simpler model is true.</param>
public sealed record LikelihoodRatio(double Statistic, int DegreesOfFreedom, double PValue)
{
    /// <summary>The test of a gain in log-likelihood. Source: Wilks 1938.</summary>
    internal static LikelihoodRatio Test(double gain, int degreesOfFreedom)
    {
        var statistic = Math.Max(0, 2 * gain);
        return new LikelihoodRatio(
            statistic, degreesOfFreedom, SpecialFunctions.GammaUpperRegularized(degreesOfFreedom / 2.0, statistic / 2));
    }
}

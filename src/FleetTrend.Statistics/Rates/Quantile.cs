using MathNet.Numerics;

namespace FleetTrend.Statistics.Rates;

/// <summary>
/// Quantiles of the gamma and beta distributions to nearly full double precision. The library's own inverses stop at an
/// absolute error of about 1e-8, which is too coarse for small rates, so its distribution functions are inverted
/// here by Newton steps on a logarithmic scale, kept inside a bracket.
/// </summary>
internal static class Quantile
{
    private const int MaximumSteps = 200;

    /// <summary>Upper standard normal quantile for a two-sided interval: 1.96 for 0.95.</summary>
    public static double NormalTwoSided(double confidence) =>
        MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, 1 - (1 - confidence) / 2);

    /// <summary>The x with P(Gamma(shape, rate 1) at most x) = <paramref name="probability"/>.</summary>
    public static double Gamma(double probability, double shape)
    {
        if (probability <= 0)
            return 0;
        if (probability >= 1)
            return double.PositiveInfinity;
        var logGamma = SpecialFunctions.GammaLn(shape);
        // For x near zero the distribution is x^shape / Gamma(shape + 1): it gives the start below one and is exact far below.
        var start = (Math.Log(probability) + SpecialFunctions.GammaLn(shape + 1)) / shape;
        if (start < -600)
            return Math.Exp(start);
        if (shape > 0.5)
            start = WilsonHilferty(probability, shape) is var x and > 0 ? Math.Log(x) : start;
        return Math.Exp(Solve(
            y => GammaGap(probability, shape, Math.Exp(y)),
            y => Math.Exp(shape * y - Math.Exp(y) - logGamma),
            start, -745, Math.Log(shape + 60 * Math.Sqrt(shape) + 800)));
    }

    /// <summary>
    /// The odds x / (1 - x) at which P(Beta(a, b) at most x) = <paramref name="probability"/>; odds keep their digits
    /// where x is near one.
    /// </summary>
    public static double BetaOdds(double probability, double a, double b)
    {
        if (probability <= 0)
            return 0;
        if (probability >= 1)
            return double.PositiveInfinity;
        var logBeta = SpecialFunctions.BetaLn(a, b);
        return Math.Exp(Solve(
            y => BetaGap(probability, a, b, y),
            y => Math.Exp(-a * LogOnePlusExp(-y) - b * LogOnePlusExp(y) - logBeta),
            Math.Log(a / b), -700, 700));
    }

    private static double GammaGap(double probability, double shape, double x) =>
        probability < 0.5
            ? SpecialFunctions.GammaLowerRegularized(shape, x) - probability
            : 1 - probability - SpecialFunctions.GammaUpperRegularized(shape, x);

    private static double BetaGap(double probability, double a, double b, double logit) =>
        logit < 0
            ? SpecialFunctions.BetaRegularized(a, b, Math.Exp(-LogOnePlusExp(-logit))) - probability
            : 1 - probability - SpecialFunctions.BetaRegularized(b, a, Math.Exp(-LogOnePlusExp(logit)));

    private static double WilsonHilferty(double probability, double shape)
    {
        var z = MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, probability);
        var root = 1 - 1 / (9 * shape) + z / (3 * Math.Sqrt(shape));
        return shape * root * root * root;
    }

    private static double LogOnePlusExp(double y) => y > 0 ? y + ElementaryFunctions.LogP1(Math.Exp(-y)) : ElementaryFunctions.LogP1(Math.Exp(y));

    /// <summary>Root of an increasing function whose derivative is given: Newton, halving where a step leaves the bracket.</summary>
    private static double Solve(Func<double, double> gap, Func<double, double> slope, double start, double low, double high)
    {
        var y = Math.Clamp(start, low, high);
        for (var step = 0; step < MaximumSteps; step++)
        {
            var g = gap(y);
            if (g == 0)
                return y;
            if (g < 0)
                low = y;
            else
                high = y;
            var next = y - g / slope(y);
            if (!(next > low && next < high))
                next = (low + high) / 2;
            if (Math.Abs(next - y) <= 1e-15 * Math.Max(1, Math.Abs(y)))
                return next;
            y = next;
        }
        return y;
    }
}

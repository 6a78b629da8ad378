namespace FleetTrend.Statistics.Lives;

/// <summary>The standard logistic distribution of ln t, for the loglogistic distribution.</summary>
internal sealed class StandardLogistic : TermwiseDistribution
{
    internal static readonly StandardLogistic Instance = new();

    /// <summary>
    /// Far before the first age the hazard is shape/age whatever mu is: with late entries the likelihood is flat there, and can rise to it.
    /// </summary>
    internal override bool HasOneHill(LifeArrays lives) => !lives.HasLateEntries;

    internal override DerivativesAt LogDensity(double z)
    {
        var (f, s) = CdfAndSurvival(z);
        return new DerivativesAt(z - (2 * LogOnePlusExp(z)), s - f, -2 * f * s);
    }

    internal override DerivativesAt LogSurvival(double z)
    {
        var (f, s) = CdfAndSurvival(z);
        return new DerivativesAt(-LogOnePlusExp(z), -f, -f * s);
    }

    internal override DerivativesAt LogCdf(double z)
    {
        var (f, s) = CdfAndSurvival(z);
        return new DerivativesAt(-LogOnePlusExp(-z), s, -f * s);
    }

    internal override double ZOfLogSurvival(double logSurvival) => ElementaryFunctions.LogExpM1(-logSurvival);

    internal override IntervalDerivatives LogInterval(double z, double width)
    {
        // S(a) - S(b) = e^a (e^(b-a) - 1) S(a) S(b): a product, so that nothing cancels.
        var (fa, sa) = CdfAndSurvival(z);
        var (fb, sb) = CdfAndSurvival(z + width);
        var value = z + ElementaryFunctions.LogExpM1(width) - LogOnePlusExp(z) - LogOnePlusExp(z + width);
        var growth = 1 / ElementaryFunctions.OneMinusExp(width);
        return new IntervalDerivatives(
            value, 1 - fa - fb, growth - fb, (-fa * sa) - (fb * sb), -fb * sb, (growth * (1 - growth)) - (fb * sb));
    }

    private static double LogOnePlusExp(double z) => z > 0 ? z + ElementaryFunctions.LogP1(Math.Exp(-z)) : ElementaryFunctions.LogP1(Math.Exp(z));

    private static (double Cdf, double Survival) CdfAndSurvival(double z)
    {
        var small = Math.Exp(-Math.Abs(z));
        var (near, far) = (1 / (1 + small), small / (1 + small));
        return z > 0 ? (near, far) : (far, near);
    }
}

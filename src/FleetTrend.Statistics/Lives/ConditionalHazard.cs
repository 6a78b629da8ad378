namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Log of the hazard between two ages, ln(ln S(now) - ln S(later)), with its derivatives in mu and tau. In logarithms nothing overflows
/// however far the ages lie from the distribution's scale.
/// </summary>
internal sealed class ConditionalHazard(StandardDistribution family, double logNow, double logLater)
{
    /// <summary>
    /// The value with gradient and Hessian. Where mu runs off to nothing a loglogistic's hazard is shape/age; the other distributions' has no end.
    /// </summary>
    internal LikelihoodPoint At(double mu, double tau)
    {
        if (double.IsNegativeInfinity(mu))
        {
            return family is StandardLogistic
                ? new LikelihoodPoint(tau + Math.Log(logLater - logNow), 0, 1, 0, 0, 0)
                : new LikelihoodPoint(double.PositiveInfinity, 0, 0, 0, 0, 0);
        }

        // f = ln(e^b - e^a), a and b the log hazards accumulated to the two ages, each a function of its z = shape (ln age - mu).
        var shape = Math.Exp(tau);
        var (z0, z1) = (shape * (logNow - mu), shape * (logLater - mu));
        var (a, b) = (family.LogCumulativeHazard(z0), family.LogCumulativeHazard(z1));
        var gap = b.Value - a.Value;
        var (share, rest) = (Math.Exp(-gap), ElementaryFunctions.OneMinusExp(gap));
        var (ofB, ofA, bend) = (1 / rest, -share / rest, share / (rest * rest));
        var (f1, f0) = (ofB * b.First, ofA * a.First);
        var f11 = (ofB * b.Second) - (bend * b.First * b.First);
        var f00 = (ofA * a.Second) - (bend * a.First * a.First);
        var f01 = bend * a.First * b.First;
        var ofTau = (z1 * f1) + (z0 * f0);
        return new LikelihoodPoint(
            b.Value + ElementaryFunctions.Log1MExp(gap),
            -shape * (f1 + f0),
            ofTau,
            shape * shape * (f11 + (2 * f01) + f00),
            -shape * (f1 + f0 + (z1 * f11) + ((z0 + z1) * f01) + (z0 * f00)),
            ofTau + (z1 * z1 * f11) + (2 * z0 * z1 * f01) + (z0 * z0 * f00));
    }
}

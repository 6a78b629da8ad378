namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Log of the hazard between two ages, ln(ln S(now) - ln S(later)), with its derivatives in mu and tau. In logarithms nothing overflows
/// however far the ages lie from the law's scale.
/// </summary>
internal sealed class ConditionalHazard(StandardLaw law, double logNow, double logLater)
{
    internal double LogNow => logNow;

    internal double LogLater => logLater;

    internal double Width => logLater - logNow;

    /// <summary>The curve in the parameters on which it keeps a value.</summary>
    internal LikelihoodPath Fixed(double logHazard) =>
        law is LogisticLaw ? new FixedLoglogisticHazard(this, logHazard) : new FixedConditionalHazard(this, logHazard);

    /// <summary>The value with gradient and Hessian.</summary>
    internal LikelihoodPoint At(double mu, double tau)
    {
        // f = ln(e^b - e^a), a and b the log hazards accumulated to the two ages, each a function of its z = shape (ln age - mu).
        var shape = Math.Exp(tau);
        var (z0, z1) = (shape * (logNow - mu), shape * (logLater - mu));
        var (a, b) = (law.LogCumulativeHazard(z0), law.LogCumulativeHazard(z1));
        var gap = b.Value - a.Value;
        var (share, rest) = (Math.Exp(-gap), Accurate.OneMinusExpOfMinus(gap));
        var (ofB, ofA, bend) = (1 / rest, -share / rest, share / (rest * rest));
        var (f1, f0) = (ofB * b.First, ofA * a.First);
        var f11 = (ofB * b.Second) - (bend * b.First * b.First);
        var f00 = (ofA * a.Second) - (bend * a.First * a.First);
        var f01 = bend * a.First * b.First;
        var ofTau = (z1 * f1) + (z0 * f0);
        return new LikelihoodPoint(
            b.Value + Accurate.LogOneMinusExpOfMinus(gap),
            -shape * (f1 + f0),
            ofTau,
            shape * shape * (f11 + (2 * f01) + f00),
            -shape * (f1 + f0 + (z1 * f11) + ((z0 + z1) * f01) + (z0 * f00)),
            ofTau + (z1 * z1 * f11) + (2 * z0 * z1 * f01) + (z0 * z0 * f00));
    }
}

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// The curve in the parameters on which the hazard between two ages, and so the conditional failure probability, keeps its value; x is tau.
/// </summary>
internal sealed class FixedConditionalHazard(ConditionalHazard between, double logHazard) : LikelihoodPath
{
    private double near = between.LogLater;

    internal override double StepLimit => 1;

    internal override Position At(double x)
    {
        // On the curve the hazard's differential is zero, and its second differential too.
        var mu = MuAt(x);
        var f = between.At(mu, x);
        var slope = -f.Tau / f.Mu;
        return new Position(mu, x, slope, 1, -(f.TauTau + (2 * f.MuTau * slope) + (f.MuMu * slope * slope)) / f.Mu);
    }

    internal override double Nearest(double mu, double tau)
    {
        near = mu;
        return tau;
    }

    /// <summary>Mu for which the hazard is the fixed one: its logarithm is a falling, concave function of mu (a line for the Weibull).</summary>
    private double MuAt(double tau)
    {
        var (mu, last) = (near, double.PositiveInfinity);
        for (var i = 0; i < 100; i++)
        {
            var f = between.At(mu, tau);
            var step = (f.Value - logHazard) / f.Mu;
            if (!double.IsFinite(step)) return double.NaN;
            mu -= step;
            var size = Math.Abs(step) / Math.Max(1, Math.Abs(mu));
            if (size <= 1e-14 || (size < 1e-8 && size >= last)) break; // rounding in the hazard may keep steps from shrinking further
            last = size;
        }

        return near = mu;
    }
}

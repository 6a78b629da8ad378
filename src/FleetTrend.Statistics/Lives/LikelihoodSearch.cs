namespace FleetTrend.Statistics.Lives;

/// <summary>Maximises the log-likelihood of lives over (mu, tau) or along a path, by Newton steps kept inside a trust region.</summary>
/// <remarks>Source: Levenberg-Marquardt damping, Nocedal and Wright, Numerical Optimization, 2006, chapter 4.</remarks>
internal sealed class LikelihoodSearch(StandardLaw law, LifeArrays lives)
{
    /// <summary>Beyond a shape of exp(7) = 1100 or its inverse no data decide; the search stops there.</summary>
    internal const double TauLimit = 7;

    /// <summary>
    /// A path may go on to a shape of exp(-25) or exp(25): where a quantity far away is reached only by a shape next to nothing, the
    /// likelihood there is needed.
    /// </summary>
    internal const double PathTauLimit = 25;

    private const int StepsMax = 200;

    internal LifeArrays Lives => lives;

    internal StandardLaw Law => law;

    internal LikelihoodPoint At(double mu, double tau) => law.LogLikelihood(lives, mu, tau);

    /// <summary>The maximum over mu and tau from a start, or null when the search leaves the limits or does not settle.</summary>
    internal Peak? Maximise(double mu, double tau)
    {
        var here = At(mu, tau);
        var damping = 1e-3;
        for (var step = 0; step < StepsMax; step++)
        {
            var (deltaMu, deltaTau, gain) = DampedStep(here, tau, damping);
            if (Math.Abs(tau + deltaTau) > TauLimit) (deltaMu, deltaTau) = (deltaMu / 4, deltaTau / 4);
            if (Math.Abs(tau + deltaTau) > TauLimit) return null;
            var next = At(mu + deltaMu, tau + deltaTau);
            var settled = gain <= SmallestGain(here.Value) && damping <= 1e-3;
            if (next.Value >= here.Value - Rounding(here.Value))
            {
                // At the last step rounding may hide the gain; the step is kept, since the gradient is more exact than the value.
                (mu, tau, here) = (mu + deltaMu, tau + deltaTau, next);
                if (settled) return new Peak(mu, tau, here);
                damping = Math.Max(damping / 10, 1e-12);
            }
            else
            {
                damping = Math.Max(damping, 1e-4) * 10;
                if (damping > 1e12) return null;
            }
        }

        return null;
    }

    /// <summary>The maximum along a path from a start. A path never leaves the limits: it stops at them.</summary>
    internal PathPeak Maximise(LikelihoodPath path, double start)
    {
        var x = start;
        var (value, slope, curve, here) = Along(path, x);
        if (path.StepLimit == 0) return new PathPeak(x, here, value, IsSettled: true);
        if (double.IsNegativeInfinity(value)) return new PathPeak(x, here, value, IsSettled: false);
        for (var step = 0; step < StepsMax; step++)
        {
            var delta = curve < 0 ? -slope / curve : Math.Sign(slope) * path.StepLimit;
            delta = Math.Clamp(delta, -path.StepLimit, path.StepLimit);
            var settled = curve < 0 && slope * delta <= SmallestGain(value);
            var shrink = 0;
            while (true)
            {
                var next = Along(path, x + delta);
                if (next.Value >= value - Rounding(value) || shrink > 60)
                {
                    if (shrink > 60) return new PathPeak(x, here, value, IsSettled: settled);
                    (x, value, slope, curve, here) = (x + delta, next.Value, next.Slope, next.Curve, next.Position);
                    break;
                }

                delta /= 4;
                shrink++;
            }

            if (settled) return new PathPeak(x, here, value, IsSettled: true);
            if (Math.Abs(here.Tau) > PathTauLimit) return new PathPeak(x, here, value, IsSettled: false);
        }

        return new PathPeak(x, here, value, IsSettled: false);
    }

    /// <summary>What the sum of many terms may be off by.</summary>
    private static double Rounding(double value) => 1e-12 * Math.Abs(value);

    /// <summary>A gain below which one more Newton step is the last.</summary>
    private static double SmallestGain(double value) => 1e-13 + (1e-15 * Math.Abs(value));

    private (double Value, double Slope, double Curve, LikelihoodPath.Position Position) Along(LikelihoodPath path, double x)
    {
        var p = path.At(x);
        if (!double.IsFinite(p.Mu) || !double.IsFinite(p.Tau)) return (double.NegativeInfinity, 0, 0, p);
        var f = At(p.Mu, p.Tau);
        if (double.IsNegativeInfinity(f.Value)) return (f.Value, 0, 0, p);
        var slope = (f.Mu * p.Mu1) + (f.Tau * p.Tau1);
        var curve = (f.MuMu * p.Mu1 * p.Mu1) + (2 * f.MuTau * p.Mu1 * p.Tau1) + (f.TauTau * p.Tau1 * p.Tau1) + (f.Mu * p.Mu2)
            + (f.Tau * p.Tau2);
        return double.IsFinite(slope) && double.IsFinite(curve) ? (f.Value, slope, curve, p) : (double.NegativeInfinity, 0, 0, p);
    }

    /// <summary>
    /// Newton's step on the Hessian with the damping added in its natural units (failures times shape squared, failures), raised until
    /// the matrix is positive definite. Also gives the gain that the quadratic model promises.
    /// </summary>
    private (double Mu, double Tau, double Gain) DampedStep(LikelihoodPoint at, double tau, double damping)
    {
        var unitTau = (double)lives.Failures;
        var unitMu = unitTau * Math.Exp(2 * tau);
        while (true)
        {
            var a = -at.MuMu + (damping * unitMu);
            var b = -at.MuTau;
            var c = -at.TauTau + (damping * unitTau);
            var determinant = (a * c) - (b * b);
            if (a > 0 && c > 0 && determinant > 1e-12 * a * c)
            {
                var mu = ((c * at.Mu) - (b * at.Tau)) / determinant;
                var t = ((a * at.Tau) - (b * at.Mu)) / determinant;
                var size = Math.Max(Math.Abs(mu) * Math.Exp(tau) / 3, Math.Abs(t));
                if (size <= 1 || damping > 1e6) return (mu, t, (at.Mu * mu) + (at.Tau * t));
            }

            damping = Math.Max(damping, 1e-4) * 4;
        }
    }

    internal sealed record Peak(double Mu, double Tau, LikelihoodPoint Point);

    internal sealed record PathPeak(double X, LikelihoodPath.Position Position, double Value, bool IsSettled);
}

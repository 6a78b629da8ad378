namespace FleetTrend.Statistics.Lives;

/// <summary>Maximises the log-likelihood of lives over (mu, tau), or over mu alone, by Newton steps kept inside a trust region.</summary>
/// <remarks>Source: Levenberg-Marquardt damping, Nocedal and Wright, Numerical Optimization, 2006, chapter 4.</remarks>
internal sealed class LikelihoodSearch(StandardDistribution family, LifeArrays lives)
{
    /// <summary>Beyond a shape of exp(7) = 1100 or its inverse no data decide; the search stops there.</summary>
    internal const double TauLimit = 7;

    private const int StepsMax = 200;

    /// <summary>Most points of a row of mus.</summary>
    private const int RowMax = 200;

    internal LifeArrays Lives => lives;

    internal StandardDistribution Family => family;

    internal LikelihoodPoint At(double mu, double tau) => family.LogLikelihood(lives, mu, tau);

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

    /// <summary>The maximum over mu at a given tau that lies uphill from a start, or null where the search does not settle.</summary>
    internal Peak? MaximiseAt(double tau, double start)
    {
        var (mu, here) = (start, At(start, tau));
        var stepMax = 3 * Math.Exp(-tau);
        if (double.IsNegativeInfinity(here.Value)) return null;
        var stalls = 0;
        for (var step = 0; step < StepsMax; step++)
        {
            var delta = here.MuMu < 0 ? -here.Mu / here.MuMu : Math.Sign(here.Mu) * stepMax;
            if (Math.Abs(delta) >= stepMax) (delta, stepMax) = (Math.Sign(delta) * stepMax, 2 * stepMax); // the way may be long
            var settled = here.MuMu < 0 && (here.Mu * delta <= 1e-9 + SmallestGain(here.Value) || stalls == 3);
            var shrink = 0;
            LikelihoodPoint next;
            while ((next = At(mu + delta, tau)).Value < here.Value - Rounding(here.Value))
            {
                if (++shrink > 60) return settled ? new Peak(mu, tau, here) : null;
                delta /= 4;
            }

            stalls = next.Value <= here.Value + Rounding(here.Value) ? stalls + 1 : 0; // far out the slope itself is rounding
            (mu, here) = (mu + delta, next);
            if (settled) return new Peak(mu, tau, here);
        }

        return null;
    }

    /// <summary>
    /// The greatest maximum over mu at a given tau, wherever it lies; for distributions whose likelihood has one hill that uphill from the start.
    /// </summary>
    internal Peak? GreatestAt(double tau, double start)
    {
        var best = MaximiseAt(tau, start);
        if (family.HasOneHill(lives)) return best;
        var mus = Row(tau);
        var values = Array.ConvertAll(mus, mu => At(mu, tau).Value);
        for (var i = 0; i < mus.Length; i++)
        {
            var isHill = (i == 0 || values[i] >= values[i - 1]) && (i == mus.Length - 1 || values[i] >= values[i + 1]);
            if (!isHill) continue;
            var hill = MaximiseAt(tau, mus[i]) ?? new Peak(mus[i], tau, At(mus[i], tau)); // the flat before the first age has no top of its own
            if (!(best?.Point.Value >= hill.Point.Value)) best = hill;
        }

        return best;
    }

    /// <summary>
    /// The outermost mu, on one side, at which the likelihood for a given tau still reaches a level; infinite where it never falls below it.
    /// </summary>
    /// <param name="top">The maximum at that tau.</param>
    /// <param name="level">A log-likelihood not above it.</param>
    /// <param name="side">-1 for the least mu, +1 for the greatest.</param>
    /// <param name="everyHill">Whether to look beyond the hill of the maximum, where the distribution can have others.</param>
    internal double Outermost(Peak top, double level, int side, bool everyHill)
    {
        var fall = Math.Sqrt(Math.Max(0, 2 * (top.Point.Value - level)));
        var (inside, outside) = (top.Mu, side * double.PositiveInfinity);
        if (everyHill && !family.HasOneHill(lives))
        {
            var mus = Row(top.Tau);
            if (side > 0) Array.Reverse(mus);
            var first = Array.FindIndex(mus, mu => At(mu, top.Tau).Value >= level);
            if (first == 0) return outside;
            if (first > 0 && side * (mus[first] - inside) > 0) (inside, outside) = (mus[first], mus[first - 1]);
        }

        // The signed root of the likelihood ratio is nearly a straight line in mu: Newton steps on it, kept inside the bracket.
        var next = inside == top.Mu ? inside + (side * fall * Width(top)) : (inside + outside) / 2;
        for (var i = 0; i < StepsMax; i++)
        {
            var mu = next;
            var at = At(mu, top.Tau);
            if (Math.Abs(at.Value - level) <= 1e-12 + Rounding(level)) return mu;
            var fallen = Math.Sqrt(Math.Max(0, 2 * (top.Point.Value - at.Value)));
            if (fallen < fall) inside = mu;
            else outside = mu;
            next = mu + ((fallen - fall) * fallen / at.Mu);
            if (!(side * (next - inside) > 0 && side * (outside - next) > 0))
                next = double.IsFinite(outside) ? (inside + outside) / 2 : top.Mu + (4 * (inside - top.Mu));
            if (Math.Abs(next - mu) <= 1e-15 * Math.Abs(mu)) return next;
        }

        return double.IsFinite(outside) ? inside : outside;
    }

    /// <summary>A row of mus, a unit of z apart, from where the whole distribution lies before the first age to where it lies beyond the last.</summary>
    private double[] Row(double tau)
    {
        var unit = Math.Exp(-tau);
        var (earliest, latest) = lives.LogAges();
        var count = Math.Min(RowMax, (int)((latest - earliest) / unit) + 12);
        var step = (latest - earliest + (12 * unit)) / count;
        return
        [
            earliest - (45 * unit), earliest - (20 * unit), earliest - (11 * unit),
            .. Enumerable.Range(0, count + 1).Select(i => earliest - (6 * unit) + (i * step)),
            latest + (20 * unit), latest + (800 * unit),
        ];
    }

    /// <summary>The standard error of mu at a given tau.</summary>
    private static double Width(Peak top) => top.Point.MuMu < 0 ? 1 / Math.Sqrt(-top.Point.MuMu) : Math.Exp(-top.Tau);

    /// <summary>What the sum of many terms may be off by.</summary>
    private static double Rounding(double value) => 1e-12 * Math.Abs(value);

    /// <summary>A gain below which one more Newton step is the last.</summary>
    private static double SmallestGain(double value) => 1e-13 + (1e-15 * Math.Abs(value));

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

    internal sealed record Peak(double Mu, double Tau, LikelihoodPoint Point)
    {
        /// <summary>Where the best mu for another tau lies, about.</summary>
        internal double MuTowards(double tau) => Point.MuMu < 0 ? Mu - (Point.MuTau / Point.MuMu * (tau - Tau)) : Mu;
    }
}

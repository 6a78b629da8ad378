using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// A curve (mu(x), tau(x)) in the parameters along which one quantity keeps its value; the likelihood is maximised along it to give the
/// profile likelihood of that quantity.
/// </summary>
internal abstract class LikelihoodPath
{
    /// <summary>The point at x, with first and second derivatives in x.</summary>
    internal abstract Position At(double x);

    /// <summary>The x of the point on the curve that starts a search near (mu, tau).</summary>
    internal abstract double Nearest(double mu, double tau);

    /// <summary>How far a search may move x in one step.</summary>
    internal abstract double StepLimit { get; }

    [StructLayout(LayoutKind.Auto)]
    internal readonly record struct Position(double Mu, double Tau, double Mu1, double Tau1, double Mu2);

    /// <summary>The shape is fixed; x is mu.</summary>
    internal sealed class FixedShape(double tau) : LikelihoodPath
    {
        internal override double StepLimit => 3 * Math.Exp(-tau);

        internal override Position At(double x) => new(x, tau, 1, 0, 0);

        internal override double Nearest(double mu, double tau) => mu;
    }

    /// <summary>Both are fixed: where the shape is given, nothing is left to maximise over.</summary>
    internal sealed class Fixed(double mu, double tau) : LikelihoodPath
    {
        internal override double StepLimit => 0;

        internal override Position At(double x) => new(mu, tau, 0, 0, 0);

        internal override double Nearest(double mu, double tau) => 0;
    }

    /// <summary>z = c at ln age = a: a quantile's age, the scale, or the survival at an age is fixed; x is tau.</summary>
    internal sealed class FixedAnchor(double logAge, double z) : LikelihoodPath
    {
        internal override double StepLimit => 1;

        internal override Position At(double x)
        {
            var offset = z * Math.Exp(-x);
            return new Position(logAge - offset, x, offset, 1, -offset);
        }

        internal override double Nearest(double mu, double tau) => tau;
    }

    /// <summary>ln S(age) - ln S(age + ahead) = <paramref name="hazard"/>: the conditional failure probability is fixed; x is tau.</summary>
    internal sealed class FixedConditionalHazard(StandardLaw law, double logAge, double logLater, double hazard) : LikelihoodPath
    {
        internal override double StepLimit => 1;

        internal override Position At(double x)
        {
            const double Half = 1e-5;
            var mu = MuAt(x);
            var slope = SlopeAt(mu, x);
            var curve = (SlopeAt(MuAt(x + Half), x + Half) - SlopeAt(MuAt(x - Half), x - Half)) / (2 * Half);
            return new Position(mu, x, slope, 1, curve);
        }

        /// <summary>A flat loglogistic law cannot reach a high hazard between two ages, however small its scale: a steeper one can.</summary>
        internal override double Nearest(double mu, double tau)
        {
            while (double.IsNaN(MuAt(tau)) && tau < LikelihoodSearch.TauLimit) tau += 0.05;
            return tau;
        }

        /// <summary>Mu for which the hazard between the two ages is the fixed one: it falls as mu rises, so bisect, then Newton.</summary>
        private double MuAt(double tau)
        {
            var shape = Math.Exp(tau);
            var (low, high) = (logAge - (1 / shape), logLater + (1 / shape));
            while (HazardBetween(low, shape) < hazard && low > -1e4) low -= 2 * (high - low);
            while (HazardBetween(high, shape) > hazard && high < 1e4) high += 2 * (high - low);
            if (!(HazardBetween(low, shape) >= hazard && HazardBetween(high, shape) <= hazard)) return double.NaN;
            var mu = (low + high) / 2;
            for (var i = 0; i < 100; i++)
            {
                var here = HazardBetween(mu, shape);
                if (here > hazard) low = mu;
                else high = mu;
                var next = mu + (Math.Log(here / hazard) * here / (shape * HazardSlope(mu, shape)));
                if (!(next > low && next < high)) next = (low + high) / 2;
                if (Math.Abs(next - mu) <= 1e-14 * Math.Max(1, Math.Abs(mu))) return next;
                mu = next;
            }

            return mu;
        }

        /// <summary>Minus the derivative of the hazard between the ages in shape times mu.</summary>
        private double HazardSlope(double mu, double shape)
        {
            var now = double.IsNegativeInfinity(logAge) ? 0 : law.LogSurvival(shape * (logAge - mu)).First;
            return now - law.LogSurvival(shape * (logLater - mu)).First;
        }

        private double SlopeAt(double mu, double tau)
        {
            // d hazard = 0 along the curve: dmu/dtau = -(dhazard/dtau) / (dhazard/dmu).
            var shape = Math.Exp(tau);
            var (z0, z1) = (shape * (logAge - mu), shape * (logLater - mu));
            var g0 = double.IsNegativeInfinity(z0) ? 0 : law.LogSurvival(z0).First;
            var g1 = law.LogSurvival(z1).First;
            var ofTau = (double.IsNegativeInfinity(z0) ? 0 : z0 * g0) - (z1 * g1);
            return ofTau / (shape * (g0 - g1));
        }

        private double HazardBetween(double mu, double shape)
        {
            var now = double.IsNegativeInfinity(logAge) ? 0 : law.LogSurvival(shape * (logAge - mu)).Value;
            var later = law.LogSurvival(shape * (logLater - mu)).Value;
            return double.IsNegativeInfinity(later) ? double.PositiveInfinity : now - later;
        }
    }
}

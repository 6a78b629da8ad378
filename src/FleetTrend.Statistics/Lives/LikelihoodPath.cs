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

    /// <summary>Whether the whole path lies where no data decide.</summary>
    internal virtual bool IsBeyondLimit => false;

    [StructLayout(LayoutKind.Auto)]
    internal readonly record struct Position(double Mu, double Tau, double Mu1, double Tau1, double Mu2, double Tau2 = 0);

    /// <summary>The shape is fixed; x is mu.</summary>
    internal sealed class FixedShape(double tau) : LikelihoodPath
    {
        internal override double StepLimit => 3 * Math.Exp(-tau);

        internal override bool IsBeyondLimit => tau < -LikelihoodSearch.TauLimit - 1 || tau > LikelihoodSearch.PathTauLimit;

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
}

using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Lives;

/// <summary>A distribution whose log-likelihood is summed term by term.</summary>
internal abstract class TermwiseDistribution : StandardDistribution
{
    /// <summary>
    /// Log of the probability of (z, z + width], with derivatives in z at fixed width and in the width; in these coordinates
    /// nothing cancels when the interval is narrow.
    /// </summary>
    internal abstract IntervalDerivatives LogInterval(double z, double width);

    internal override LikelihoodPoint LogLikelihood(LifeArrays lives, double mu, double tau)
    {
        var shape = Math.Exp(tau);
        var total = new Sum(shape);
        foreach (var (logAge, weight) in lives.Survivals)
        {
            var z = shape * (logAge - mu);
            total.Add(weight, z, LogSurvival(z));
        }

        foreach (var (logAge, weight) in lives.Lefts)
        {
            var z = shape * (logAge - mu);
            total.Add(weight, z, LogCdf(z));
        }

        foreach (var (logAge, weight) in lives.Exacts)
        {
            var z = shape * (logAge - mu);
            total.Add(weight, z, LogDensity(z));
        }

        var intervals = lives.Intervals;
        for (var i = 0; i < intervals.Count; i++)
        {
            var z = shape * (intervals.LogLower[i] - mu);
            var width = shape * intervals.LogRatio[i];
            total.Add(intervals.Weight[i], z, width, LogInterval(z, width));
        }

        // An exact failure's density is per hour: d z / d t = shape / t.
        var jacobian = new LikelihoodPoint((lives.ExactWeight * tau) - lives.ExactLogAgeSum, 0, lives.ExactWeight, 0, 0, 0);
        return (total.Point + jacobian).OrImpossible();
    }

    /// <summary>Log probability of an interval and its derivatives in z and in the width w.</summary>
    [StructLayout(LayoutKind.Auto)]
    internal readonly record struct IntervalDerivatives(double Value, double Z, double W, double ZZ, double ZW, double WW);

    /// <summary>Chain rule from z to (mu, tau): dz/dmu = -shape, dz/dtau = z, d2z/dmu dtau = -shape, d2z/dtau2 = z.</summary>
    [StructLayout(LayoutKind.Auto)]
    private struct Sum(double shape)
    {
        internal LikelihoodPoint Point { get; private set; }

        internal void Add(double weight, double z, DerivativesAt f) => Point += new LikelihoodPoint(
            weight * f.Value,
            -weight * shape * f.First,
            weight * z * f.First,
            weight * shape * shape * f.Second,
            -weight * shape * (f.First + (z * f.Second)),
            weight * z * (f.First + (z * f.Second)));

        internal void Add(double weight, double z, double w, IntervalDerivatives f) => Point += new LikelihoodPoint(
            weight * f.Value,
            -weight * shape * f.Z,
            weight * ((z * f.Z) + (w * f.W)),
            weight * shape * shape * f.ZZ,
            -weight * shape * (f.Z + (z * f.ZZ) + (w * f.ZW)),
            weight * ((z * f.Z) + (w * f.W) + (z * z * f.ZZ) + (2 * z * w * f.ZW) + (w * w * f.WW)));
    }
}

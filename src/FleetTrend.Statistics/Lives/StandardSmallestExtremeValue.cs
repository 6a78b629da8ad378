using System.Numerics;
using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// The standard smallest-extreme-value distribution of ln t, for the Weibull and exponential distributions. With H = e^z the cumulative hazard,
/// a survival term is -H, from a late entry -(H(lower) - H(entry)), and an interval term is that and ln(1 - e^-(H(upper) - H(lower))).
/// </summary>
internal sealed class StandardSmallestExtremeValue : StandardDistribution
{
    internal static readonly StandardSmallestExtremeValue Instance = new();

    internal override DerivativesAt LogDensity(double z)
    {
        var hazard = Math.Exp(z);
        return new DerivativesAt(z - hazard, 1 - hazard, -hazard);
    }

    internal override DerivativesAt LogSurvival(double z)
    {
        var hazard = Math.Exp(z);
        return new DerivativesAt(-hazard, -hazard, -hazard);
    }

    internal override DerivativesAt LogCdf(double z)
    {
        var hazard = Math.Exp(z);
        var odds = 1 / ElementaryFunctions.ExpM1(hazard);
        var first = odds * hazard;
        return new DerivativesAt(ElementaryFunctions.Log1MExp(hazard), first, first - (first * (1 + odds) * hazard));
    }

    internal override DerivativesAt LogCumulativeHazard(double z) => new(z, 1, 0);

    internal override double ZOfLogSurvival(double logSurvival) => Math.Log(-logSurvival);

    internal override LikelihoodPoint LogLikelihood(LifeArrays lives, double mu, double tau)
    {
        var sums = new Sums(mu, Math.Exp(tau));
        sums.AddSurvivals(lives.NewSurvivals);
        sums.AddSpans(lives.LateSpans);
        sums.AddLefts(lives.Lefts);
        sums.AddIntervals(lives.Intervals);
        return (sums.Point() + ExactTerms(lives, mu, tau)).OrImpossible();
    }

    /// <summary>What an exact failure adds to the survival term -H: ln hazard = tau + z - ln t.</summary>
    private static LikelihoodPoint ExactTerms(LifeArrays lives, double mu, double tau)
    {
        var shape = Math.Exp(tau);
        var z = shape * (lives.ExactLogAgeSum - (lives.ExactWeight * mu));
        return new LikelihoodPoint(
            (lives.ExactWeight * tau) + z - lives.ExactLogAgeSum,
            -shape * lives.ExactWeight,
            lives.ExactWeight + z,
            0,
            -shape * lives.ExactWeight,
            z);
    }

    /// <summary>Sums over vectors of lives; a life is 5 to 10 multiplications and one to four exponentials or logarithms.</summary>
    [StructLayout(LayoutKind.Auto)]
    private struct Sums(double mu, double shape)
    {
        private static readonly Vector<double> Settled = new(700); // e^-700 is nothing beside 1

        private readonly Vector<double> location = new(mu);
        private readonly Vector<double> slope = new(shape);

        // Sums of w H, w H z, w H z^2 ...
        private Vector<double> h0;
        private Vector<double> h1;
        private Vector<double> h2;

        // ... and of ln(1 - e^-D) and its derivatives, D = H(upper) - H(lower).
        private Vector<double> log;
        private Vector<double> gradMu;
        private Vector<double> gradTau;
        private Vector<double> hessMu;
        private Vector<double> hessMix;
        private Vector<double> hessTau;

        internal void AddSurvivals(LifeArrays.Terms terms)
        {
            var ages = AsVectors(terms.LogAge);
            var weights = AsVectors(terms.Weight);
            for (var i = 0; i < ages.Length; i++)
            {
                var z = slope * (ages[i] - location);
                AddHazard(weights[i] * Vector.Exp(z), z);
            }
        }

        internal void AddLefts(LifeArrays.Terms terms)
        {
            var ages = AsVectors(terms.LogAge);
            var weights = AsVectors(terms.Weight);
            for (var i = 0; i < ages.Length; i++)
            {
                var z = slope * (ages[i] - location);
                var hazard = Vector.Exp(z);
                AddDifference(weights[i], hazard, z * hazard, z * (Vector<double>.One + z) * hazard);
            }
        }

        internal void AddSpans(LifeArrays.IntervalTerms terms)
        {
            var ages = AsVectors(terms.LogLower);
            var ratios = AsVectors(terms.LogRatio);
            var weights = AsVectors(terms.Weight);
            for (var i = 0; i < ages.Length; i++)
            {
                var z = slope * (ages[i] - location);
                var (difference, first, second) = Difference(Vector.Exp(z), z, slope * ratios[i]);
                h0 += weights[i] * difference;
                h1 += weights[i] * first;
                h2 += weights[i] * (second - first);
            }
        }

        internal void AddIntervals(LifeArrays.IntervalTerms terms)
        {
            var lowers = AsVectors(terms.LogLower);
            var ratios = AsVectors(terms.LogRatio);
            var weights = AsVectors(terms.Weight);
            var newWeights = AsVectors(terms.NewWeight);
            for (var i = 0; i < lowers.Length; i++)
            {
                var z = slope * (lowers[i] - location);
                var hazard = Vector.Exp(z);
                AddHazard(newWeights[i] * hazard, z);
                var (difference, first, second) = Difference(hazard, z, slope * ratios[i]);
                AddDifference(weights[i], difference, first, second);
            }
        }

        internal readonly LikelihoodPoint Point()
        {
            var (a0, a1, a2) = (Vector.Sum(h0), Vector.Sum(h1), Vector.Sum(h2));
            return new LikelihoodPoint(
                Vector.Sum(log) - a0,
                shape * (a0 - Vector.Sum(gradMu)),
                Vector.Sum(gradTau) - a1,
                shape * shape * (Vector.Sum(hessMu) - a0),
                shape * (a0 + a1 + Vector.Sum(hessMix)),
                Vector.Sum(hessTau) - a1 - a2);
        }

        private static ReadOnlySpan<Vector<double>> AsVectors(double[] values) =>
            MemoryMarshal.Cast<double, Vector<double>>(values.AsSpan());

        /// <summary>The hazard accumulated between z and z + width, and its first two derivatives in tau, with its own relative accuracy.</summary>
        private static (Vector<double> Value, Vector<double> First, Vector<double> Second) Difference(
            Vector<double> hazard, Vector<double> z, Vector<double> width)
        {
            var end = z + width;
            var difference = Vectors.ExpDifference(hazard, end, width);
            return (
                difference,
                (end * difference) + (width * hazard),
                ((end + (end * end)) * difference) + (width * (Vector<double>.One + end + z) * hazard));
        }

        private void AddHazard(Vector<double> weighted, Vector<double> z)
        {
            var once = weighted * z;
            h0 += weighted;
            h1 += once;
            h2 += once * z;
        }

        /// <summary>Adds w ln(1 - e^-D), given D and its first two derivatives in tau; in mu they are -shape D and shape^2 D.</summary>
        private void AddDifference(Vector<double> w, Vector<double> d, Vector<double> first, Vector<double> second)
        {
            var one = Vector<double>.One;
            var gone = -Vectors.ExpM1(-d);
            var odds = (one - gone) / gone;
            var curve = odds * (one + odds);
            var open = Vector.LessThan(d, Settled);
            log += w * Vector.Log(gone);
            gradMu += Select(open, w * odds * d);
            gradTau += Select(open, w * odds * first);
            hessMu += Select(open, w * ((odds * d) - (curve * d * d)));
            hessMix += Select(open, w * ((curve * d * first) - (odds * (d + first))));
            hessTau += Select(open, w * ((odds * second) - (curve * first * first)));
        }

        private static Vector<double> Select(Vector<long> mask, Vector<double> value) =>
            Vector.ConditionalSelect(mask, value, Vector<double>.Zero);
    }
}

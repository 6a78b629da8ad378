using MathNet.Numerics;

namespace FleetTrend.Statistics;

/// <summary>
/// The distribution of a count: chances of lowest, lowest + 1, and so on. Chances below <see cref="Negligible"/> at either end are dropped,
/// which keeps a sum of many distributions short.
/// </summary>
internal sealed class CountDistribution
{
    private const double Negligible = 1e-40;

    private readonly long lowest;
    private readonly double[] chances;

    private CountDistribution(long lowest, double[] chances)
    {
        this.lowest = lowest;
        this.chances = chances;
    }

    /// <summary>A count that is always zero.</summary>
    public static CountDistribution Zero { get; } = new(0, [1]);

    /// <summary>Distribution with given chances of 0, 1, 2 and so on.</summary>
    public static CountDistribution FromChances(double[] chances) => Trimmed(0, chances);

    /// <summary>Chances of 0, 1, 2 and so on.</summary>
    public double[] FromZero() => [.. Enumerable.Repeat(0.0, checked((int)lowest)), .. chances];

    /// <summary>Binomial distribution, by recursion outwards from its mode.</summary>
    public static CountDistribution Binomial(long trials, double chance)
    {
        if (trials == 0 || chance <= 0)
            return Zero;
        if (chance >= 1)
            return new CountDistribution(trials, [1]);
        var mode = Math.Min(trials, (long)Math.Floor((trials + 1) * chance));
        var atMode = Math.Exp(
            SpecialFunctions.GammaLn(trials + 1.0) - SpecialFunctions.GammaLn(mode + 1.0)
            - SpecialFunctions.GammaLn(trials - mode + 1.0) + mode * Math.Log(chance) + (trials - mode) * ElementaryFunctions.LogP1(-chance));
        return FromMode(
            mode, atMode,
            k => k == trials ? 0 : (trials - k) / (k + 1.0) * (chance / (1 - chance)),
            k => k == 0 ? 0 : k / (trials - k + 1.0) * ((1 - chance) / chance));
    }

    /// <summary>
    /// A count of given mean and variance: Poisson counts whose means vary by a gamma distribution where the variance is above the mean, else
    /// binomial with the
    /// nearest whole number of trials. By recursion outwards from its mode.
    /// </summary>
    public static CountDistribution WithMoments(double mean, double variance)
    {
        if (mean <= 0)
            return Zero;
        if (variance < mean * (1 - 1e-6))
        {
            var trials = Math.Max((long)Math.Ceiling(mean), (long)Math.Round(mean * mean / (mean - variance)));
            return Binomial(trials, mean / trials);
        }

        var more = Math.Max(variance / mean - 1, 1e-6);
        var (shape, share) = (mean / more, more / (1 + more));
        var mode = Math.Max(0, (long)Math.Floor((shape - 1) * more));
        return FromMode(mode, 1, k => (k + shape) / (k + 1.0) * share, k => k == 0 ? 0 : k / ((k - 1 + shape) * share));
    }

    /// <summary>Least and greatest count: beyond either lie at most half of what the confidence leaves.</summary>
    public (long Lower, long Upper) Limits(double confidence)
    {
        var (tail, below, above) = ((1 - confidence) / 2, 0.0, 0.0);
        var (first, last) = (0, chances.Length - 1);
        while (first < last && below + chances[first] <= tail)
            below += chances[first++];
        while (last > first && above + chances[last] <= tail)
            above += chances[last--];
        return (lowest + first, lowest + last);
    }

    /// <summary>Distribution of the sum of two independent counts.</summary>
    public CountDistribution Plus(CountDistribution other)
    {
        var sum = new double[chances.Length + other.chances.Length - 1];
        for (var i = 0; i < chances.Length; i++)
        {
            for (var j = 0; j < other.chances.Length; j++)
                sum[i + j] += chances[i] * other.chances[j];
        }
        return Trimmed(lowest + other.lowest, sum);
    }

    /// <summary>Distribution of the sum of so many independent counts of this distribution, by repeated doubling.</summary>
    public CountDistribution Times(int count)
    {
        var (sum, power) = (Zero, this);
        for (var left = count; left > 0; left >>= 1)
        {
            if ((left & 1) == 1)
                sum = sum.Plus(power);
            if (left > 1)
                power = power.Plus(power);
        }
        return sum;
    }

    /// <summary>Chance of a count at least this high.</summary>
    public double AtLeast(long count)
    {
        if (count <= lowest)
            return 1;
        var sum = 0.0;
        for (var k = (long)chances.Length - 1; k >= 0 && lowest + k >= count; k--)
            sum += chances[k];
        return Math.Min(1, sum);
    }

    /// <summary>Chance of a count at most this high.</summary>
    public double AtMost(long count)
    {
        if (count >= lowest + chances.Length - 1)
            return 1;
        var sum = 0.0;
        for (var k = 0; k < chances.Length && lowest + k <= count; k++)
            sum += chances[k];
        return Math.Min(1, sum);
    }

    /// <summary>
    /// Chance of a count at least this high once every chance is weighted by exp(<paramref name="logTilt"/> * count): for a
    /// sum of binomials that is the distribution with all odds multiplied by exp(<paramref name="logTilt"/>).
    /// </summary>
    public double AtLeast(long count, double logTilt) => TiltedShare(k => k >= count, count, logTilt);

    /// <summary>Chance of a count at most this high, weighted as in <see cref="AtLeast(long, double)"/>.</summary>
    public double AtMost(long count, double logTilt) => TiltedShare(k => k <= count, count, logTilt);

    /// <summary>Sum of the chances of counts at least this high, each times exp(<paramref name="logWeight"/>) per event beyond it.</summary>
    public double WeightedAtLeast(long count, double logWeight) => WeightedSum(k => k >= count, count, logWeight);

    /// <summary>Sum of the chances of counts at most this high, each weighted as in <see cref="WeightedAtLeast"/>.</summary>
    public double WeightedAtMost(long count, double logWeight) => WeightedSum(k => k <= count, count, logWeight);

    private double WeightedSum(Func<long, bool> isCounted, long reference, double logWeight)
    {
        var sum = 0.0;
        for (var k = 0; k < chances.Length; k++)
        {
            if (isCounted(lowest + k))
                sum += chances[k] * Math.Exp(logWeight * (lowest + k - reference));
        }
        return sum;
    }

    private double TiltedShare(Func<long, bool> isCounted, long reference, double logTilt)
    {
        var (part, whole) = (0.0, 0.0);
        for (var k = 0; k < chances.Length; k++)
        {
            var weight = chances[k] * Math.Exp(logTilt * (lowest + k - reference));
            whole += weight;
            if (isCounted(lowest + k))
                part += weight;
        }
        return part / whole;
    }

    private static CountDistribution FromMode(long mode, double atMode, Func<long, double> up, Func<long, double> down)
    {
        var above = new List<double>();
        var chance = atMode;
        for (var k = mode; (chance *= up(k)) > Negligible; k++)
            above.Add(chance);
        var below = new List<double>();
        chance = atMode;
        for (var k = mode; (chance *= down(k)) > Negligible; k--)
            below.Add(chance);
        below.Reverse();
        double[] all = [.. below, atMode, .. above];
        var total = all.Sum();
        for (var i = 0; i < all.Length; i++)
            all[i] /= total;
        return new CountDistribution(mode - below.Count, all);
    }

    private static CountDistribution Trimmed(long lowest, double[] chances)
    {
        var first = Array.FindIndex(chances, c => c > Negligible);
        var last = Array.FindLastIndex(chances, c => c > Negligible);
        return new CountDistribution(lowest + first, chances[first..(last + 1)]);
    }
}

using MathNet.Numerics.Random;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// Mean number of events by age where the events' own ages are unknown and only counts between looks are: the isotonic
/// regression of cumulative counts on look age, weighted by the number of looks. Looks must not be made because of the
/// events; units must be known from age zero.
/// </summary>
public sealed class PanelCountEstimate
{
    private readonly PanelCountPoint[] points;

    private PanelCountEstimate(PanelCountPoint[] points, int units, long events, double confidence)
    {
        this.points = points;
        Units = units;
        Events = events;
        Confidence = confidence;
    }

    /// <summary>One point per distinct look age, ascending.</summary>
    public IReadOnlyList<PanelCountPoint> Points => points;

    /// <summary>Units.</summary>
    public int Units { get; }

    /// <summary>Events in all.</summary>
    public long Events { get; }

    /// <summary>Confidence of the pointwise limits.</summary>
    public double Confidence { get; }

    /// <summary>Estimates the mean function.</summary>
    /// <param name="units">The units.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <param name="resamples">Resamples of whole units behind the limits, 100 or more.</param>
    /// <param name="seed">Their seed: the same seed gives the same limits.</param>
    /// <returns>The estimate, or <see cref="NotEstimableKind.NothingObserved"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1), or fewer than 100 resamples.</exception>
    /// <remarks>
    /// Source: Sun and Kalbfleisch 1995, Statistica Sinica 5 (the estimate); percentile limits by resampling units, Efron
    /// and Tibshirani 1993.
    /// </remarks>
    public static Outcome<PanelCountEstimate> Estimate(
        IReadOnlyList<PanelUnit> units, double confidence = 0.95, int resamples = 500, int seed = 1)
    {
        Confidences.Check(confidence);
        ArgumentOutOfRangeException.ThrowIfLessThan(resamples, 100);
        if (units.Count == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No unit was looked at.");

        double[] ages = [.. units.SelectMany(u => u.Looks).Select(l => l.Age).Distinct().Order()];
        var looks = units.Select(u => Cumulative(u, ages)).ToArray();
        var once = new int[units.Count];
        Array.Fill(once, 1);
        var (weights, means, value) = Isotonic(looks, once, ages.Length);

        var random = new MersenneTwister(seed, threadSafe: false);
        var draws = new double[ages.Length][];
        for (var k = 0; k < ages.Length; k++)
            draws[k] = new double[resamples];
        for (var r = 0; r < resamples; r++)
        {
            var times = new int[units.Count];
            for (var i = 0; i < times.Length; i++)
                times[random.Next(times.Length)]++;
            var (_, _, again) = Isotonic(looks, times, ages.Length);
            for (var k = 0; k < ages.Length; k++)
                draws[k][r] = again[k];
        }
        var estimate = new PanelCountPoint[ages.Length];
        for (var k = 0; k < ages.Length; k++)
        {
            Array.Sort(draws[k]);
            var skip = (int)Math.Floor((1 - confidence) / 2 * resamples);
            estimate[k] = new PanelCountPoint(
                ages[k], (int)weights[k], means[k], value[k], Math.Min(value[k], draws[k][skip]),
                Math.Max(value[k], draws[k][resamples - 1 - skip]));
        }
        return new PanelCountEstimate(estimate, units.Count, units.Sum(u => u.Looks.Sum(l => (long)l.Found)), confidence);
    }

    private static (int Age, int Count)[] Cumulative(PanelUnit unit, double[] ages)
    {
        var sum = 0;
        return [.. unit.Looks.Select(l => (Array.BinarySearch(ages, l.Age), sum += l.Found))];
    }

    /// <summary>Weights and means by age, and the means pooled until they rise. Ages without a look take the value before them.</summary>
    private static (double[] Weights, double[] Means, double[] Value) Isotonic(
        (int Age, int Count)[][] looks, int[] times, int ages)
    {
        var weights = new double[ages];
        var means = new double[ages];
        for (var i = 0; i < looks.Length; i++)
        {
            if (times[i] == 0)
                continue;
            foreach (var (age, count) in looks[i])
            {
                weights[age] += times[i];
                means[age] += (double)times[i] * count;
            }
        }
        for (var k = 0; k < ages; k++)
            means[k] = weights[k] > 0 ? means[k] / weights[k] : 0;
        return (weights, means, Pooled(weights, means));
    }

    /// <summary>Pool adjacent violators.</summary>
    private static double[] Pooled(double[] weights, double[] means)
    {
        var blocks = new List<(double Weight, double Mean, int First)>();
        for (var k = 0; k < means.Length; k++)
        {
            if (weights[k] == 0)
                continue;
            var (weight, mean, first) = (weights[k], means[k], k);
            while (blocks.Count > 0 && blocks[^1].Mean >= mean)
            {
                var last = blocks[^1];
                mean = (last.Mean * last.Weight + mean * weight) / (last.Weight + weight);
                weight += last.Weight;
                first = last.First;
                blocks.RemoveAt(blocks.Count - 1);
            }
            blocks.Add((weight, mean, first));
        }
        var value = new double[means.Length];
        for (var b = 0; b < blocks.Count; b++)
        {
            var end = b + 1 < blocks.Count ? blocks[b + 1].First : value.Length;
            Array.Fill(value, blocks[b].Mean, blocks[b].First, end - blocks[b].First);
        }
        return value;
    }
}

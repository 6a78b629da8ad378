using System.Runtime.InteropServices;

namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Lives as arrays of log ages, split by the kind of term that each adds to the log-likelihood, so that a term is a loop without branches:
/// survivals (right-censored, and entries with negative weight), exact failures, left-censored, and intervals.
/// A life seen for zero hours adds no term at all.
/// The Weibull distribution takes survivals from <see cref="NewSurvivals"/> and <see cref="LateSpans"/> instead: its hazards grow so steeply
/// that an entry subtracted by itself leaves nothing but rounding.
/// </summary>
internal sealed class LifeArrays
{
    internal LifeArrays(IReadOnlyList<Life> lives)
        : this(lives, stride: 1)
    {
    }

    /// <summary>Takes every <paramref name="stride"/>-th life only: a quick look at a large set, for starting values.</summary>
    internal LifeArrays(IReadOnlyList<Life> lives, int stride)
    {
        var survivals = new TermArray();
        var newSurvivals = new TermArray();
        var lateSpans = new IntervalTermArray();
        var exacts = new TermArray();
        var lefts = new TermArray();
        var intervals = new IntervalTermArray();
        var span = AsSpan(lives);
        for (var i = 0; i < span.Length; i += stride)
        {
            ref readonly var life = ref span[i];
            if (life.Count < 1) continue; // default(Life): no life at all
            Lives += life.Count;
            if (!life.Failed)
            {
                if (life.Lower == life.Entry) continue;
                survivals.Add(life.Lower, life.Count);
            }
            else
            {
                Failures += life.Count;
                if (life.IsExact) exacts.Add(life.Lower, life.Count);
                else if (life.Lower > 0) intervals.Add(life.Lower, life.Upper, life.Count, life.Entry > 0 ? 0 : life.Count);
                else lefts.Add(life.Upper, life.Count);
            }

            if (life.Entry > 0)
            {
                survivals.Add(life.Entry, -life.Count);
                if (life.Lower > life.Entry) lateSpans.Add(life.Entry, life.Lower, life.Count, 0);
                HasLateEntries = true;
            }
            else if (!life.Failed || life.IsExact)
            {
                newSurvivals.Add(life.Lower, life.Count);
            }

            LatestGood = Math.Max(LatestGood, life.Lower);
            EarliestFailed = Math.Min(EarliestFailed, life.Upper);
            HoursSeenGood += (double)life.Count * (life.Lower - life.Entry);
        }

        Survivals = survivals.Close();
        NewSurvivals = newSurvivals.Close();
        LateSpans = lateSpans.Close();
        Exacts = exacts.Close();
        Lefts = lefts.Close();
        Intervals = intervals.Close();
        foreach (var (logAge, weight) in Exacts) (ExactWeight, ExactLogAgeSum) = (ExactWeight + weight, ExactLogAgeSum + (weight * logAge));
    }

    internal long Lives { get; }

    internal long Failures { get; }

    /// <summary>Largest last-good age over lives that say anything.</summary>
    internal double LatestGood { get; }

    /// <summary>Smallest failed-by age; infinite when nothing failed.</summary>
    internal double EarliestFailed { get; } = double.PositiveInfinity;

    /// <summary>Whether any life that says something came under observation with age.</summary>
    internal bool HasLateEntries { get; }

    /// <summary>Hours over which lives were known to be good while under observation.</summary>
    internal double HoursSeenGood { get; }

    internal double ExactWeight { get; }

    internal double ExactLogAgeSum { get; }

    internal Terms Survivals { get; }

    /// <summary>Ages that lives watched from new are known to have survived, right-censored ones and exact failures.</summary>
    internal Terms NewSurvivals { get; }

    /// <summary>From entry to the last age known good, of lives that came under observation with age.</summary>
    internal IntervalTerms LateSpans { get; }

    internal Terms Exacts { get; }

    internal Terms Lefts { get; }

    internal IntervalTerms Intervals { get; }

    /// <summary>The least and the greatest log age.</summary>
    internal (double Earliest, double Latest) LogAges()
    {
        var (earliest, latest) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var terms in (Terms[])[Survivals, Exacts, Lefts])
        {
            foreach (var (logAge, _) in terms) (earliest, latest) = (Math.Min(earliest, logAge), Math.Max(latest, logAge));
        }

        for (var i = 0; i < Intervals.Count; i++)
        {
            earliest = Math.Min(earliest, Intervals.LogLower[i]);
            latest = Math.Max(latest, Intervals.LogLower[i] + Intervals.LogRatio[i]);
        }

        return (earliest, latest);
    }

    /// <summary>A typical log age, to start searches from.</summary>
    internal double MeanLogAge()
    {
        double sum = 0, weight = 0;
        foreach (var (logAge, w) in Survivals)
        {
            if (w <= 0) continue;
            sum += w * logAge;
            weight += w;
        }

        foreach (var (logAge, w) in Exacts) (sum, weight) = (sum + (w * logAge), weight + w);
        foreach (var (logAge, w) in Lefts) (sum, weight) = (sum + (w * logAge), weight + w);
        for (var i = 0; i < Intervals.Count; i++)
        {
            var w = Intervals.Weight[i];
            sum += w * (Intervals.LogLower[i] + (Intervals.LogRatio[i] / 2));
            weight += w;
        }

        return sum / weight;
    }

    private static ReadOnlySpan<Life> AsSpan(IReadOnlyList<Life> lives) => lives switch
    {
        Life[] array => array,
        List<Life> list => CollectionsMarshal.AsSpan(list),
        _ => lives.ToArray(),
    };

    /// <summary>Log ages with weights, padded with weight zero to a whole number of vectors.</summary>
    internal sealed record Terms(double[] LogAge, double[] Weight, int Count)
    {
        public IEnumerator<(double LogAge, double Weight)> GetEnumerator()
        {
            for (var i = 0; i < Count; i++) yield return (LogAge[i], Weight[i]);
        }
    }

    /// <summary>
    /// Intervals as ln lower and ln(upper/lower), with the weight of the interval and that of having survived to its lower end from new;
    /// padded with weight zero to a whole number of vectors.
    /// </summary>
    internal sealed record IntervalTerms(double[] LogLower, double[] LogRatio, double[] Weight, double[] NewWeight, int Count);

    private sealed class TermArray
    {
        private double[] age = [];
        private double[] weight = [];
        private int count;

        internal void Add(double value, double w)
        {
            if (count == age.Length)
            {
                var size = Math.Max(16, 2 * count);
                Array.Resize(ref age, size);
                Array.Resize(ref weight, size);
            }

            age[count] = value;
            weight[count++] = w;
        }

        internal Terms Close()
        {
            var length = Vectors.PaddedLength(count);
            Array.Resize(ref age, length);
            Array.Resize(ref weight, length);
            if (count > 0) age.AsSpan(count).Fill(age[count - 1]); // a real age: overflows no sooner than the data
            weight.AsSpan(count).Clear();
            Vectors.LogInPlace(age);
            return new Terms(age, weight, count);
        }
    }

    private sealed class IntervalTermArray
    {
        private double[] lower = [];
        private double[] ratio = [];
        private double[] weight = [];
        private double[] newWeight = [];
        private int count;

        internal void Add(double from, double to, double w, double fromNew)
        {
            if (count == lower.Length)
            {
                var size = Math.Max(16, 2 * count);
                Array.Resize(ref lower, size);
                Array.Resize(ref ratio, size);
                Array.Resize(ref weight, size);
                Array.Resize(ref newWeight, size);
            }

            lower[count] = from;
            ratio[count] = (to - from) / from; // exact for close ends, where ln upper - ln lower would lose all digits
            newWeight[count] = fromNew;
            weight[count++] = w;
        }

        internal IntervalTerms Close()
        {
            var length = Vectors.PaddedLength(count);
            Array.Resize(ref lower, length);
            Array.Resize(ref ratio, length);
            Array.Resize(ref weight, length);
            Array.Resize(ref newWeight, length);
            if (count > 0)
            {
                lower.AsSpan(count).Fill(lower[count - 1]);
                ratio.AsSpan(count).Fill(ratio[count - 1]);
            }

            weight.AsSpan(count).Clear();
            newWeight.AsSpan(count).Clear();
            Vectors.LogInPlace(lower);
            Vectors.LogP1InPlace(ratio);
            return new IntervalTerms(lower, ratio, weight, newWeight, count);
        }
    }
}

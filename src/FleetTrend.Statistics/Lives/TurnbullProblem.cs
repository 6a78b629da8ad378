namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Lives turned into the smallest problem with the same non-parametric likelihood: candidate intervals j = 0 .. m-1 that alone can carry
/// mass, and for each life the range of candidates in which it failed.
/// </summary>
/// <remarks>
/// With x_j the step of the cumulative hazard over candidate j and X(k) the sum of the first k steps, a life with range [a, b) that entered
/// before candidate e adds -X(a) + X(e) + ln(1 - exp(-(X(b) - X(a)))), the last term only where b is below m: the last candidate takes what
/// is left. So only the (a, b) pairs need a row each; the rest is linear in the steps.
/// </remarks>
internal sealed class TurnbullProblem
{
    private readonly TurnbullEnds ends;
    private readonly double[] survivedWeight;
    private readonly double[] enteredWeight;

    internal TurnbullProblem(IReadOnlyList<Life> source)
    {
        var lives = source as Life[] ?? [.. source];
        ends = new TurnbullEnds(lives);
        (Lower, Upper) = (ends.CandidateLower, ends.CandidateUpper);
        survivedWeight = new double[CandidateCount + 1];
        enteredWeight = new double[CandidateCount + 1];
        OpenWeight = new double[CandidateCount + 1];
        EarliestEntry = double.PositiveInfinity;
        var pairs = new List<(long Key, double Weight)>();
        foreach (ref readonly var life in lives.AsSpan())
        {
            if (life.Count < 1) continue;
            Lives += life.Count;
            EarliestEntry = Math.Min(EarliestEntry, life.Entry);
            if (!life.Failed) continue;
            Failures += life.Count;
            var a = life.IsExact ? ends.FirstAtExact(life.Lower) : ends.FirstAfter(life.Lower);
            var b = ends.EndAt(life.Upper);
            survivedWeight[a] += life.Count;
            if (b < CandidateCount) pairs.Add((((long)a << 32) | (uint)b, life.Count));
            else OpenWeight[a] += life.Count;
        }

        AddBalances();
        if (double.IsInfinity(EarliestEntry)) EarliestEntry = 0;
        (First, End, Weight) = Merge(pairs);
        Linear = LinearPart();
    }

    internal long Lives { get; }

    internal long Failures { get; }

    internal double EarliestEntry { get; }

    internal int CandidateCount => Lower.Length;

    internal double[] Lower { get; }

    internal double[] Upper { get; }

    /// <summary>First candidate of each distinct range that ends before the last candidate.</summary>
    internal int[] First { get; }

    /// <summary>One past its last candidate.</summary>
    internal int[] End { get; }

    /// <summary>Lives with that range.</summary>
    internal double[] Weight { get; }

    /// <summary>For candidate j, minus the lives that were under observation before it and known good after it.</summary>
    internal double[] Linear { get; }

    /// <summary>Lives whose range runs to the last candidate, by first candidate.</summary>
    internal double[] OpenWeight { get; }

    /// <summary>Lives by number of candidates before their entry.</summary>
    internal double[] EnteredWeight => enteredWeight;

    /// <summary>
    /// Candidates before a life's entry, and its range [First, End): where it failed, or from where on it was not seen again.
    /// </summary>
    internal (int Entry, int First, int End) RangeOf(Life life) => life.Failed
        ? (CandidatesThrough(life.Entry), life.IsExact ? ends.FirstAtExact(life.Lower) : ends.FirstAfter(life.Lower), ends.EndAt(life.Upper))
        : (CandidatesThrough(life.Entry), CandidatesThrough(life.Lower), CandidateCount);

    /// <summary>Candidates that end at or before an age.</summary>
    private int CandidatesThrough(double age)
    {
        var (low, high) = (0, CandidateCount);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (Upper[middle] <= age) low = middle + 1;
            else high = middle;
        }

        return low;
    }

    /// <summary>
    /// The age by which all then under observation had failed although the last candidate lies beyond, or null: there the hazard step
    /// has no finite maximum.
    /// </summary>
    internal double? EmptyAgeBeforeLaterEntries()
    {
        var covered = new double[CandidateCount + 1];
        for (var i = 0; i < First.Length; i++)
        {
            covered[First[i]] += Weight[i];
            covered[End[i]] -= Weight[i];
        }

        double failing = 0;
        for (var j = 0; j < CandidateCount - 1; j++)
        {
            failing += covered[j];
            if (failing > 0 && Linear[j] == 0) return Upper[j];
        }

        return null;
    }

    private void AddBalances()
    {
        for (var i = 0; i < ends.LeaveAge.Length; i++)
        {
            var a = ends.FirstAfter(ends.LeaveAge[i]);
            survivedWeight[a] += ends.LeaveWeight[i];
            OpenWeight[a] += ends.LeaveWeight[i];
        }

        for (var i = 0; i < ends.EnterAge.Length; i++) enteredWeight[ends.EndAt(ends.EnterAge[i])] += ends.EnterWeight[i];
    }

    private double[] LinearPart()
    {
        var linear = new double[CandidateCount];
        double entered = 0, gone = 0;
        for (var j = 0; j < CandidateCount; j++)
        {
            // Known good after candidate j: first candidate above j. Under observation before it: entry at or before j.
            entered += enteredWeight[j];
            gone += survivedWeight[j];
            linear[j] = gone - entered;
        }

        return linear;
    }

    private static (int[] First, int[] End, double[] Weight) Merge(List<(long Key, double Weight)> pairs)
    {
        pairs.Sort(static (x, y) => x.Key.CompareTo(y.Key));
        var (first, end, weight) = (new List<int>(), new List<int>(), new List<double>());
        var last = -1L;
        foreach (var (key, w) in pairs)
        {
            if (key == last)
            {
                weight[^1] += w;
                continue;
            }

            last = key;
            first.Add((int)(key >> 32));
            end.Add((int)(key & uint.MaxValue));
            weight.Add(w);
        }

        return ([.. first], [.. end], [.. weight]);
    }
}

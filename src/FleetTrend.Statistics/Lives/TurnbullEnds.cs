namespace FleetTrend.Statistics.Lives;

/// <summary>
/// The distinct ends of lives in order of age, the candidate intervals between a left end and the right end that follows it at once, and
/// where each end lies among the candidates.
/// </summary>
/// <remarks>
/// At one age the order is: left end of an exact failure (which includes the age), right ends and entries, left ends of intervals
/// (which exclude it). An entry counts as a right end: mass just before it is seen by everybody but the life that enters.
/// A life that leaves good at the age at which another enters cancels it: a good look that only splits a life makes no end.
/// </remarks>
internal sealed class TurnbullEnds
{
    private readonly double[] exacts;
    private readonly double[] rights;
    private readonly double[] lefts;
    private readonly int[] beforeExact;
    private readonly int[] afterRight;
    private readonly int[] beforeLeft;

    internal TurnbullEnds(Life[] lives)
    {
        var (exact, right, left) = (new List<double>(), new List<double>(lives.Length), new List<double>(lives.Length));
        var (ages, nets) = (new List<double>(lives.Length), new List<double>(lives.Length));
        foreach (ref readonly var life in lives.AsSpan())
        {
            if (life.Count < 1) continue;
            if (life.Failed)
            {
                (life.IsExact ? exact : left).Add(life.Lower);
                right.Add(life.Upper);
            }
            else
            {
                ages.Add(life.Lower);
                nets.Add(life.Count);
            }

            ages.Add(life.Entry);
            nets.Add(-life.Count);
        }

        (LeaveAge, LeaveWeight, EnterAge, EnterWeight) = Balance([.. ages], [.. nets]);
        left.AddRange(LeaveAge);
        right.AddRange(EnterAge);
        if (LeaveAge.Length > 0) right.Add(double.PositiveInfinity);
        (exacts, rights, lefts) = (Distinct(exact), Distinct(right), Distinct(left));
        (beforeExact, afterRight, beforeLeft) = (new int[exacts.Length], new int[rights.Length], new int[lefts.Length]);
        var (lower, upper) = (new List<double>(), new List<double>());
        double? open = null;
        for (int i = 0, j = 0, k = 0; j < rights.Length;)
        {
            var nextExact = i < exacts.Length ? exacts[i] : double.PositiveInfinity;
            var nextLeft = k < lefts.Length ? lefts[k] : double.PositiveInfinity;
            if (nextExact <= rights[j] && nextExact <= nextLeft && i < exacts.Length)
            {
                beforeExact[i++] = lower.Count;
                open = nextExact;
            }
            else if (rights[j] <= nextLeft)
            {
                if (open is { } from)
                {
                    lower.Add(from);
                    upper.Add(rights[j]);
                    open = null;
                }

                afterRight[j++] = lower.Count;
            }
            else
            {
                beforeLeft[k++] = lower.Count;
                open = nextLeft;
            }
        }

        (CandidateLower, CandidateUpper) = ([.. lower], [.. upper]);
    }

    internal double[] CandidateLower { get; }

    internal double[] CandidateUpper { get; }

    /// <summary>Ages at which more lives left good than entered, and by how many.</summary>
    internal double[] LeaveAge { get; }

    internal double[] LeaveWeight { get; }

    /// <summary>Ages at which more lives entered than left good, and by how many.</summary>
    internal double[] EnterAge { get; }

    internal double[] EnterWeight { get; }

    internal int FirstAtExact(double age) => beforeExact[Array.BinarySearch(exacts, age)];

    internal int FirstAfter(double age) => beforeLeft[Array.BinarySearch(lefts, age)];

    internal int EndAt(double age) => afterRight[Array.BinarySearch(rights, age)];

    private static (double[] LeaveAge, double[] LeaveWeight, double[] EnterAge, double[] EnterWeight) Balance(double[] ages, double[] nets)
    {
        Array.Sort(ages, nets);
        var (leaveAge, leave, enterAge, enter) = (new List<double>(), new List<double>(), new List<double>(), new List<double>());
        for (var i = 0; i < ages.Length;)
        {
            var age = ages[i];
            double net = 0;
            for (; i < ages.Length && ages[i] == age; i++) net += nets[i];
            if (net > 0)
            {
                leaveAge.Add(age);
                leave.Add(net);
            }
            else if (net < 0)
            {
                enterAge.Add(age);
                enter.Add(-net);
            }
        }

        return ([.. leaveAge], [.. leave], [.. enterAge], [.. enter]);
    }

    private static double[] Distinct(List<double> values)
    {
        var sorted = values.ToArray();
        Array.Sort(sorted);
        var count = 0;
        foreach (var v in sorted)
        {
            if (count == 0 || v != sorted[count - 1]) sorted[count++] = v;
        }

        return sorted[..count];
    }
}

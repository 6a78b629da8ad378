namespace FleetTrend.Statistics.Lives;

/// <summary>
/// The distinct ends of lives in order of age, the candidate intervals between a left end and the right end that follows it at once, and
/// where each end lies among the candidates.
/// </summary>
/// <remarks>
/// At one age the order is: left end of an exact failure (which includes the age), right ends and entries, left ends of intervals
/// (which exclude it). An entry counts as a right end: mass just before it is seen by everybody but the life that enters.
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
        foreach (ref readonly var life in lives.AsSpan())
        {
            if (life.Count < 1 || SaysNothing(life)) continue;
            (life.IsExact ? exact : left).Add(life.Lower);
            right.Add(life.Upper);
            if (life.Entry > 0) right.Add(life.Entry);
        }

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

    /// <summary>A life still good at the age at which it was first seen.</summary>
    internal static bool SaysNothing(Life life) => !life.Failed && life.Lower == life.Entry;

    internal int FirstCandidate(Life life) => life.IsExact
        ? beforeExact[Array.BinarySearch(exacts, life.Lower)]
        : beforeLeft[Array.BinarySearch(lefts, life.Lower)];

    internal int EndCandidate(Life life) => afterRight[Array.BinarySearch(rights, life.Upper)];

    internal int EntryCandidate(Life life) => life.Entry > 0 ? afterRight[Array.BinarySearch(rights, life.Entry)] : 0;

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

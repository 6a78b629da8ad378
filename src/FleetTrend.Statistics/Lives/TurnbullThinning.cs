namespace FleetTrend.Statistics.Lives;

/// <summary>
/// Gathers many small hazard steps into few, to begin Newton's method with: equal shares of the cumulative hazard go to their largest step,
/// and every interval keeps at least one step of its own.
/// </summary>
internal static class TurnbullThinning
{
    internal static double[] Thin(TurnbullProblem problem, double[] steps, int parts)
    {
        var thin = new double[steps.Length];
        var share = steps.Sum() / parts;
        double gathered = 0;
        var largest = 0;
        for (var j = 0; j < steps.Length; j++)
        {
            gathered += steps[j];
            if (steps[j] > steps[largest]) largest = j;
            if (gathered < share && j + 1 < steps.Length) continue;
            thin[largest] = gathered;
            gathered = 0;
            largest = Math.Min(j + 1, steps.Length - 1);
        }

        KeepOneEach(problem, steps, thin);
        return thin;
    }

    /// <summary>Walks the intervals by their end; one without a step gets its largest back, which then serves those that overlap it.</summary>
    private static void KeepOneEach(TurnbullProblem problem, double[] steps, double[] thin)
    {
        var kept = new int[steps.Length + 1];
        for (var j = 0; j < steps.Length; j++) kept[j + 1] = kept[j] + (thin[j] > 0 ? 1 : 0);
        var order = Enumerable.Range(0, problem.First.Length).OrderBy(i => problem.End[i]).ToArray();
        var added = -1;
        foreach (var i in order)
        {
            var (first, end) = (problem.First[i], problem.End[i]);
            if (kept[end] > kept[first] || added >= first) continue;
            added = first;
            for (var j = first; j < end; j++)
            {
                if (steps[j] > steps[added]) added = j;
            }

            thin[added] = Math.Max(steps[added], 1e-12);
        }
    }
}

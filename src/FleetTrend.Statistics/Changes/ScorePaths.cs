namespace FleetTrend.Statistics.Changes;

/// <summary>Scores of ordinary units over their time, kept where they could be a call: how often a new call comes at any limit.</summary>
internal sealed class ScorePaths(double logLowerLine)
{
    // Below this no limit lies: odds of one for a change are no reason to call.
    private const double Floor = 0;

    private readonly List<double[]> paths = [];

    /// <summary>Unit-years behind the paths.</summary>
    public double Years { get; set; }

    /// <summary>Adds the path of one unit, with the score at each period with a finding and, where it was high, at the period before the next.</summary>
    public void Add(ChangeScorer scorer, WatchedUnit unit, IReadOnlyList<UnitFinding> findings, PanelCounts counts)
    {
        List<double>? path = null;
        var (last, previous) = (double.NegativeInfinity, -1);
        for (var i = 0; i < findings.Count; i++)
        {
            var period = findings[i].Period;
            if (i + 1 < findings.Count && findings[i + 1].Period == period)
                continue;
            if (last >= Floor && period - 1 > previous)
                path!.Add(scorer.Log(unit, findings, counts, period - 1));
            last = scorer.Log(unit, findings, counts, period);
            previous = period;
            if (path is not null || last >= Floor)
                (path ??= []).Add(last);
        }

        if (path is not null)
            paths.Add([.. path]);
    }

    /// <summary>New calls on all paths at a limit; a call ends when the score falls below the lower line.</summary>
    public int Calls(double logLimit)
    {
        var calls = 0;
        foreach (var path in paths)
        {
            var isCalled = false;
            foreach (var score in path)
            {
                if (!isCalled && score >= logLimit)
                {
                    isCalled = true;
                    calls++;
                }
                else if (score < logLimit + logLowerLine)
                {
                    isCalled = false;
                }
            }
        }

        return calls;
    }

    /// <summary>All scores kept that could be a limit, ascending.</summary>
    public double[] Candidates() => [.. paths.SelectMany(p => p).Where(s => s >= Floor).Distinct().Order()];
}

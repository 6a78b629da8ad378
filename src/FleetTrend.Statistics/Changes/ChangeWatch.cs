namespace FleetTrend.Statistics.Changes;

/// <summary>Scores of the units of a panel as known at the end of a period.</summary>
public sealed class ChangeWatch
{
    private readonly WatchedPanel panel;
    private readonly PanelCounts counts;
    private readonly ChangeScorer scorer;

    /// <summary>Makes it.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="spread">How its units differ.</param>
    /// <param name="prior">What changes are looked for.</param>
    public ChangeWatch(WatchedPanel panel, RateSpread spread, ChangePrior prior)
    {
        this.panel = panel;
        counts = new PanelCounts(panel, [.. panel.Units.Select(u => u.Findings)]);
        scorer = new ChangeScorer(panel, spread, prior);
    }

    /// <summary>Score of a unit; null where it has no finding yet, or no others were watched.</summary>
    /// <param name="unit">Index of the unit.</param>
    /// <param name="period">The period at whose end it is scored, with what was known then.</param>
    public ChangeScore? At(int unit, int period) => scorer.Describe(panel.Units[unit], counts, period);

    /// <summary>
    /// Calls of a unit from its first period to its last, each as it would have been made with what was known then. A call begins when the score
    /// reaches the limit and ends when it falls below the lower line.
    /// </summary>
    /// <param name="unit">Index of the unit.</param>
    /// <param name="logLimit">Logarithm of the limit.</param>
    /// <param name="logLowerLine">Logarithm of the lower line over the limit.</param>
    /// <returns>Period with whose findings each began, and the first period in which it no longer stood; null while it stands.</returns>
    public IReadOnlyList<(int From, int? To)> Calls(int unit, double logLimit, double logLowerLine)
    {
        var calls = new List<(int From, int? To)>();
        var watched = panel.Units[unit];
        var (next, isCalled) = (0, false);
        for (var p = watched.FirstPeriod; p <= watched.LastPeriod; p++)
        {
            var isFound = next < watched.Findings.Count && watched.Findings[next].Period == p;
            while (next < watched.Findings.Count && watched.Findings[next].Period == p)
                next++;
            if (!isCalled && !isFound)
                continue;
            var log = scorer.Log(watched, watched.Findings, counts, p);
            if (!isCalled && log >= logLimit)
            {
                calls.Add((p, null));
                isCalled = true;
            }
            else if (isCalled && log < logLimit + logLowerLine)
            {
                calls[^1] = (calls[^1].From, p);
                isCalled = false;
            }
        }

        return calls;
    }
}

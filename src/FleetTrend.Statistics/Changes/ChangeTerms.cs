namespace FleetTrend.Statistics.Changes;

/// <summary>The terms of a score by part, ratio and period, as logarithms: what they add up to, and what each of them holds of it.</summary>
internal sealed class ChangeTerms(int scopes, int ratios, int window)
{
    private readonly List<(int Scope, int Ratio, int Period, double Log)> terms = new(scopes * ratios * window / 4);

    public void Add(int scope, int ratio, int period, double log) => terms.Add((scope, ratio, period, log));

    /// <summary>Most probable part with its share; inside it the most probable ratio, and the median of the first period with its limits.</summary>
    public (int Scope, double ScopeShare, int Ratio, double RatioShare, int Since, int Earliest, int Latest) Summarise(double logTotal)
    {
        var byScope = Shares(terms, t => t.Scope, logTotal);
        var scope = byScope.MaxBy(s => s.Value);
        var inside = terms.Where(t => t.Scope == scope.Key).ToList();
        var logInside = logTotal + Math.Log(scope.Value);
        var ratio = Shares(inside, t => t.Ratio, logInside).MaxBy(s => s.Value);
        var periods = Shares(inside, t => t.Period, logInside);
        var (before, earliest, since, latest) = (0.0, 0, 0, 0);
        foreach (var (period, share) in periods.OrderBy(s => s.Key))
        {
            if (before <= 0.05)
                earliest = period;
            if (before <= 0.5)
                since = period;
            if (before <= 0.95)
                latest = period;
            before += share;
        }

        return (scope.Key, scope.Value, ratio.Key, ratio.Value, since, earliest, latest);
    }

    private static Dictionary<int, double> Shares(
        List<(int Scope, int Ratio, int Period, double Log)> terms, Func<(int Scope, int Ratio, int Period, double Log), int> key, double logTotal) =>
        terms.GroupBy(key).ToDictionary(g => g.Key, g => g.Sum(t => Math.Exp(t.Log - logTotal)));
}

namespace FleetTrend.Trends;

/// <summary>p-values of many tests, equal ones counted together.</summary>
/// <param name="PValues">The values, ascending, each once.</param>
/// <param name="Counts">How many tests had each.</param>
public sealed record TestCounts(IReadOnlyList<double> PValues, IReadOnlyList<int> Counts)
{
    /// <summary>No test.</summary>
    public static TestCounts None { get; } = new([], []);

    /// <summary>Counts tests.</summary>
    public static TestCounts Count(IEnumerable<double> pValues)
    {
        List<IGrouping<double, double>> equal = [.. pValues.GroupBy(p => p).OrderBy(g => g.Key)];
        return new TestCounts([.. equal.Select(g => g.Key)], [.. equal.Select(g => g.Count())]);
    }
}

namespace FleetTrend.Statistics.Lives;

/// <summary>Lives under observation and failures by age, found by binary search.</summary>
internal sealed class AtRiskByAge
{
    private readonly (double[] Age, double[] Before) entries;
    private readonly (double[] Age, double[] Before) ends;
    private readonly Dictionary<double, double> failures;

    internal AtRiskByAge(IReadOnlyList<Life> lives)
    {
        entries = Counted(lives, l => l.Entry);
        ends = Counted(lives, l => l.Lower);
        failures = lives.Where(l => l.IsExact).GroupBy(l => l.Lower).ToDictionary(g => g.Key, g => g.Sum(l => (double)l.Count));
    }

    internal IEnumerable<double> FailureAges => failures.Keys;

    internal double FailuresAt(double age) => failures.GetValueOrDefault(age);

    /// <summary>Entered before the age and not gone before it.</summary>
    internal double AtRisk(double age) => Below(entries, age) - Below(ends, age);

    private static double Below((double[] Age, double[] Before) sorted, double age)
    {
        var at = Array.BinarySearch(sorted.Age, age);
        return sorted.Before[at >= 0 ? at : ~at];
    }

    /// <summary>Distinct ages in order, with the number of lives before each and, at the end, of all.</summary>
    private static (double[] Age, double[] Before) Counted(IReadOnlyList<Life> lives, Func<Life, double> age)
    {
        var groups = lives.GroupBy(age).OrderBy(g => g.Key).Select(g => (Age: g.Key, Count: g.Sum(l => (double)l.Count))).ToArray();
        var before = new double[groups.Length + 1];
        for (var k = 0; k < groups.Length; k++) before[k + 1] = before[k] + groups[k].Count;
        return (Array.ConvertAll(groups, g => g.Age), before);
    }
}

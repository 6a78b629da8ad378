using FleetTrend.Statistics.Norms;

namespace FleetTrend.Trends;

/// <summary>All tests of one kind that were made together, over all type groups: what a q-value allows for.</summary>
public sealed class TestFamily
{
    private readonly Dictionary<double, double> qValues = [];
    private readonly Lazy<Dictionary<double, double>> adjusted;

    /// <summary>Puts the tests of the type groups together.</summary>
    public TestFamily(IEnumerable<TestCounts> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        List<double> all = [.. groups.SelectMany(g => g.PValues.Zip(g.Counts, (p, count) => Enumerable.Repeat(p, count)).SelectMany(p => p))];
        Count = all.Count;
        adjusted = new(() => all.Zip(FamilyWise.Holm(all)).DistinctBy(p => p.First).ToDictionary(p => p.First, p => p.Second));
        foreach (var (p, q) in all.Zip(FalseDiscovery.QValues(all)))
            qValues[p] = q;
    }

    /// <summary>How many tests.</summary>
    public int Count { get; }

    /// <summary>The q-value of one of the tests (Benjamini and Hochberg 1995).</summary>
    /// <exception cref="KeyNotFoundException">No test had that p-value.</exception>
    public double QValue(double pValue) => qValues[pValue];

    /// <summary>The p-value of one of the tests, so that the chance of even one false call among all is held (Holm 1979).</summary>
    /// <exception cref="KeyNotFoundException">No test had that p-value.</exception>
    public double HolmPValue(double pValue) => adjusted.Value[pValue];
}

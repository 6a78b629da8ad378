namespace FleetTrend.Statistics.Norms;

/// <summary>
/// Every unit against the norm of the others: expected events at the others' rate in each stratum, and the exact chance
/// of the unit's count. A unit in its own norm would partly hide itself.
/// </summary>
public sealed record LeaveOneOutTest
{
    private LeaveOneOutTest(IReadOnlyList<UnitStanding> standings, IReadOnlyList<string> notComparable)
    {
        Standings = standings;
        NotComparable = notComparable;
    }

    /// <summary>One standing per comparable unit, in order of the unit's key (ordinal).</summary>
    public IReadOnlyList<UnitStanding> Standings { get; }

    /// <summary>Units without exposure, or in no stratum where another unit was observed.</summary>
    public IReadOnlyList<string> NotComparable { get; }

    /// <summary>
    /// Tests every unit. Within a stratum, were all rates equal, the unit's count given the stratum's total would be
    /// binomial with chance unit hours over all hours; over strata the counts add, and their distribution is found by exact
    /// convolution, so that nothing depends on the size of the rates.
    /// </summary>
    /// <param name="strata">The strata; a unit may be in some and not in others.</param>
    /// <returns>Standings of all units that can be compared.</returns>
    /// <exception cref="ArgumentException">Two strata share a key.</exception>
    /// <remarks>
    /// Source: indirect standardisation and the conditional test of Poisson counts, Przyborowski and Wilenski 1940,
    /// Biometrika 31; Breslow and Day 1987, Statistical Methods in Cancer Research II (stratified form, from memory).
    /// However small a chance is, it keeps its digits: see <see cref="ConditionalCount"/>.
    /// </remarks>
    public static LeaveOneOutTest Test(IReadOnlyList<NormStratum> strata)
    {
        ArgumentNullException.ThrowIfNull(strata);
        if (strata.Select(s => s.Key).Distinct(StringComparer.Ordinal).Count() != strata.Count)
            throw new ArgumentException("Two strata share a key.", nameof(strata));

        var byUnit = new SortedDictionary<string, List<(NormStratum Stratum, UnitCount Count)>>(StringComparer.Ordinal);
        foreach (var stratum in strata)
        {
            foreach (var count in stratum.Counts)
            {
                if (!byUnit.TryGetValue(count.Unit, out var own))
                    byUnit.Add(count.Unit, own = []);
                own.Add((stratum, count));
            }
        }

        var standings = new List<UnitStanding>(byUnit.Count);
        var notComparable = new List<string>();
        foreach (var (unit, own) in byUnit)
        {
            var comparable = own.Where(o => o.Count.ExposureHours > 0 && Others(o.Stratum, o.Count) > 0).ToList();
            if (comparable.Count == 0)
                notComparable.Add(unit);
            else
                standings.Add(Standing(unit, comparable));
        }
        return new LeaveOneOutTest(standings, notComparable);
    }

    private static UnitStanding Standing(string unit, List<(NormStratum Stratum, UnitCount Count)> own)
    {
        var distribution = new ConditionalCount();
        var contributions = new List<StratumContribution>(own.Count);
        foreach (var (stratum, count) in own)
        {
            var others = Others(stratum, count);
            var othersEvents = stratum.Events - count.Events;
            var inStratum = new ConditionalCount();
            inStratum.Add(stratum.Events, count.ExposureHours, others);
            distribution.Add(stratum.Events, count.ExposureHours, others);
            contributions.Add(new StratumContribution(
                stratum.Key, count.Events, count.ExposureHours, othersEvents, others,
                othersEvents * (count.ExposureHours / others), inStratum.AtLeast(count.Events)));
        }
        contributions.Sort((a, b) => b.Excess.CompareTo(a.Excess));
        var observed = own.Sum(o => o.Count.Events);
        return new UnitStanding(
            unit, observed, own.Sum(o => o.Count.ExposureHours), contributions.Sum(c => c.Expected),
            distribution.AtLeast(observed), distribution.AtMost(observed), contributions);
    }

    private static double Others(NormStratum stratum, UnitCount count)
    {
        // Summed afresh rather than by subtraction, so that a unit alone in its stratum leaves exactly nothing.
        var others = 0.0;
        foreach (var other in stratum.Counts)
        {
            if (!ReferenceEquals(other, count))
                others += other.ExposureHours;
        }
        return others;
    }
}

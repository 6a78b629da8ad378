namespace FleetTrend.Trends.LocationStandings;

/// <summary>Each place of each aircraft against the same place on the others, where a condition was seen more than once.</summary>
public sealed class LocationStandingAnalysis : Analysis<LocationStanding>
{
    /// <summary>Makes the analysis.</summary>
    public LocationStandingAnalysis()
        : base("location-standings")
    {
    }

    /// <summary>Strongest departure first; the same order for the same places.</summary>
    public override IEnumerable<LocationStanding> Order(IEnumerable<LocationStanding> items) => items
        .OrderBy(s => s.QValue).ThenBy(s => s.PValue.Value)
        .ThenBy(s => s.Registration, StringComparer.Ordinal)
        .ThenBy(s => s.TypeGroup, StringComparer.Ordinal)
        .ThenBy(s => s.Location, StringComparer.Ordinal)
        .ThenBy(s => s.Condition);

    /// <inheritdoc/>
    public override Subject SubjectOf(LocationStanding item) => new(Registration: item.Registration, Base: item.Base);

    /// <inheritdoc/>
    public override IReadOnlyList<LocationStanding> Settle(IReadOnlyList<LocationStanding> items, TestFamily tests, TrendParameters parameters) =>
        [.. items.Select(s => s with { QValue = tests.QValue(s.PValue.Value), Comparisons = tests.Count })];

    /// <inheritdoc/>
    protected override IEnumerable<LocationStanding> Find(TypeGroupInputs inputs, ICollection<double> tests)
    {
        foreach (var p in inputs.LocationTests.Tests)
            tests.Add(p);
        return inputs.LocationTests.SeenAgain
            .OrderBy(s => s.Registration, StringComparer.Ordinal).ThenBy(s => s.Location, StringComparer.Ordinal).ThenBy(s => s.Condition);
    }
}

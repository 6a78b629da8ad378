using FleetTrend.Observations.DataProblems;

namespace FleetTrend.Trends.DataProblems;

/// <summary>What in the records of each aircraft does not add up, with its present type group.</summary>
public sealed class DataProblemAnalysis : Analysis<DataProblem>
{
    /// <summary>Makes the analysis.</summary>
    public DataProblemAnalysis()
        : base("data-problems")
    {
    }

    /// <summary>By aircraft, then day; the same order for the same problems.</summary>
    public override IEnumerable<DataProblem> Order(IEnumerable<DataProblem> items) => items
        .OrderBy(p => p.Registration, StringComparer.Ordinal)
        .ThenBy(p => p.Date)
        .ThenBy(p => p.Kind)
        .ThenBy(p => p.Description, StringComparer.Ordinal)
        .ThenBy(p => string.Join('|', p.Evidence), StringComparer.Ordinal);

    /// <inheritdoc/>
    public override Subject SubjectOf(DataProblem item) => new(Registration: item.Registration);

    /// <inheritdoc/>
    protected override IEnumerable<DataProblem> Find(TypeGroupInputs inputs, ICollection<double> tests) =>
        Order(inputs.Present.SelectMany(a => a.Problems));
}

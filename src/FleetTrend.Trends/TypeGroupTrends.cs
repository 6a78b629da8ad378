using FleetTrend.Trends.Flags;

namespace FleetTrend.Trends;

/// <summary>What the analyses found in one type group, before what only all type groups together decide.</summary>
/// <param name="TypeGroup">Name of the type group.</param>
/// <param name="Results">One per analysis, in the order of the list.</param>
/// <param name="Candidates">What may be flagged.</param>
public sealed record TypeGroupTrends(string TypeGroup, IReadOnlyList<AnalysisResult> Results, FlagCandidates Candidates)
{
    /// <summary>Runs analyses on a type group.</summary>
    /// <param name="inputs">The type group.</param>
    /// <param name="analyses">Which; <see cref="Analyses.All"/> is all of the product's.</param>
    public static TypeGroupTrends Compute(TypeGroupInputs inputs, IReadOnlyList<Analysis> analyses)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(analyses);
        // A fleet that is one type group would leave all processors but one idle. What analyses share is computed once, by who needs it first.
        return new(inputs.TypeGroup, [.. analyses.AsParallel().AsOrdered().Select(a => a.Compute(inputs))], FlagCandidates.Find(inputs));
    }

    /// <summary>The answers of an analysis, not settled yet.</summary>
    internal IEnumerable<IReadOnlyList<T>> Find<T>(Analysis<T> analysis)
        where T : notnull => Results.First(r => r.Analysis == analysis).Subjects.Cast<SubjectResult<T>>().Select(s => s.Items);
}

namespace FleetTrend.Trends;

/// <summary>What an analysis found in a type group.</summary>
/// <param name="Analysis">The analysis.</param>
/// <param name="Subjects">Its answers by subject, in order.</param>
/// <param name="Tests">The tests it made.</param>
public sealed record AnalysisResult(Analysis Analysis, IReadOnlyList<SubjectResult> Subjects, TestCounts Tests);

using FleetTrend.Trends;

namespace FleetTrend.Results;

/// <summary>Which analyses a refresh runs.</summary>
/// <param name="All">The analyses, in order.</param>
public sealed record AnalysisList(IReadOnlyList<Analysis> All);

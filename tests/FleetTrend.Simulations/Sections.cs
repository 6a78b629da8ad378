namespace FleetTrend.Simulations;

/// <summary>The sections of the coverage page, in order.</summary>
internal static class Sections
{
    public static IEnumerable<Section> All =>
    [
        LifeCoverage.Section, FewFailureCoverage.Section, ComparisonSize.Section, BaseComparison.Section, StratifiedCoverage.Section, StudyTable.Section,
    ];
}

namespace FleetTrend.Simulations;

/// <summary>The sections of the coverage page, in order.</summary>
internal static class Sections
{
    public static IEnumerable<Section> All =>
    [
        LifeCoverage.Section, FewFailureCoverage.Section, BaseComparison.Section, PartNumberStudy.Section, RepairComparison.Section, LeaksLeft.Section,
        PositionStudy.Section, ClusteredRateCoverage.Section, SpareStudy.Section, GrowthStudy.Section, ScoreStudy.Section, StudyTable.Section,
    ];

    /// <summary>What stands above the sections.</summary>
    public static void WriteHead(TextWriter output)
    {
        output.WriteLine("# How often the intervals hold the truth");
        output.WriteLine();
        output.WriteLine("Written by `dotnet run -c Release --project tests/FleetTrend.Simulations -- src/FleetTrend.Statistics/COVERAGE.md`; seeds are fixed.");
        output.WriteLine("A part of a section's title after it makes that section again and keeps the others. An interval at 95 % should hold the truth in 93 to 97 % of sets.");
    }
}

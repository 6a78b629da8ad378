using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Findings;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.DataProblems;

/// <summary>Two sources, one crack: offered to a person within 3 days and 5 h (common practice, no source), and counted apart until then.</summary>
public sealed class PossibleDuplicatesTests
{
    [Theory]
    [InlineData("tablet", 40, 130, Condition.Crack, true)]
    [InlineData("tablet", 43, 135, Condition.Crack, true)]
    [InlineData("tablet", 37, 125, Condition.Crack, true)]
    [InlineData("tablet", 44, 130, Condition.Crack, false)] // four days
    [InlineData("tablet", 41, 135.1, Condition.Crack, false)] // more than 5 h
    [InlineData("tablet", 40, 130, Condition.Corrosion, false)]
    [InlineData("cards", 40, 130, Condition.Crack, false)] // a source that saw two says two
    public void Only_near_findings_of_one_condition_from_two_sources_are_offered(
        string source, int day, double hours, Condition condition, bool offered)
    {
        var seen = new InventedAircraft().Good(10, 100, Weld)
            .Found(40, 130, Weld, Condition.Crack).Found(day, hours, Weld, condition, source: source)
            .Observe();
        Assert.Equal(offered, seen.Problems.Any(p => p.Kind == DataProblemKind.PossibleDuplicate));
    }

    [Fact]
    public void Another_location_is_another_crack_and_an_accepted_finding_is_none()
    {
        Assert.Empty(new InventedAircraft().Found(40, 130, Gasket, Condition.LeakTrace)
            .Found(40, 130, OtherGasket, Condition.LeakTrace, source: "tablet").Observe().Problems);
        Assert.Empty(new InventedAircraft().Found(40, 130, Weld, Condition.Crack)
            .Found(40, 130, Weld, Condition.Crack, grade: FindingGrade.Accepted, source: "tablet").Observe().Problems);
    }

    [Fact] // Cards: 4 mm and 11 mm. Tablet: 10 mm and 4.5 mm. Nearest: 4 with 4.5 (0.5 apart), then 11 with 10.
    public void Two_cracks_told_by_both_sources_are_two_pairs_matched_by_size()
    {
        var seen = new InventedAircraft()
            .Found(40, 130, Weld, Condition.Crack, 4, id: "c4").Found(40, 130, Weld, Condition.Crack, 11, id: "c11")
            .Found(40, 130, Weld, Condition.Crack, 10, id: "t10", source: "tablet").Found(40, 130, Weld, Condition.Crack, 4.5, id: "t4", source: "tablet")
            .Observe();
        var pairs = seen.Problems.Where(p => p.Kind == DataProblemKind.PossibleDuplicate)
            .Select(p => string.Join('+', p.Evidence.Select(k => k.SourceRecordId))).Order(StringComparer.Ordinal);
        Assert.Equal(["c11+t10", "c4+t4"], pairs);
        Assert.Equal(4, seen.Events.Count); // never merged silently
    }
}

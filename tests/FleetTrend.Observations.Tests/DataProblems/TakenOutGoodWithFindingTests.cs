using FleetTrend.Observations.DataProblems;
using FleetTrend.Observations.Lives;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Installations;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.DataProblems;

/// <summary>A part found failed and taken out "examined good". What is listed follows from the records written in the test.</summary>
public sealed class TakenOutGoodWithFindingTests
{
    private static InventedAircraft Leaking => new InventedAircraft().Installed(1, 500, Gasket).Good(80, 705, Gasket)
        .Found(120, 812, Gasket, Condition.LeakTrace, id: "leak");

    private static List<DataProblem> Listed(InventedAircraft aircraft) =>
        [.. aircraft.Observe().Problems.Where(p => p.Kind == DataProblemKind.TakenOutGoodWithFinding)];

    [Fact] // Good at 205 h on the part, leaking at 312 h: failed between, whatever the removal says.
    public void The_same_day_it_is_listed_and_the_finding_counts()
    {
        var seen = Leaking.Removed(120, 812, Gasket, RemovalReason.WithSisters, examinedGood: true).Installed(120, 812, Gasket).Observe();
        var problem = Assert.Single(seen.Problems);
        Assert.Equal((DataProblemKind.TakenOutGoodWithFinding, Day(120)), (problem.Kind, problem.Date));
        Assert.StartsWith("Leak trace at exhaust/cyl-3/gasket was found on 2025-05-01", problem.Description, StringComparison.Ordinal);
        Assert.Contains("The finding counts: the part failed.", problem.Description, StringComparison.Ordinal);
        Assert.Equal(2, problem.Evidence.Count);
        Assert.Equal(LifeEnding.Failed, seen.Lives[0].Ending);
        Assert.Equal(new Statistics.Lives.Life(205, 312, 0), seen.Lives[0].ForFit());
    }

    [Fact] // Deferred on day 120 and taken out on day 140 as good, with no word on the leak between.
    public void Left_open_and_taken_out_good_later_it_is_listed() =>
        Assert.Single(Listed(Leaking.Did(120, 812, Gasket, ActionKind.Deferred).Removed(140, 850, Gasket, examinedGood: true)));

    [Fact] // A replacement says how it came out and nothing about the leak; a re-torque cured it first.
    public void Only_an_action_that_kept_the_part_explains_it()
    {
        Assert.Single(Listed(Leaking.Did(120, 812, Gasket, ActionKind.Replaced).Removed(120, 812, Gasket, examinedGood: true)));
        Assert.Empty(Listed(Leaking.Did(120, 812, Gasket, ActionKind.Retorqued).Removed(120, 812, Gasket, examinedGood: true)));
        Assert.Empty(Listed(Leaking.Did(125, 820, Gasket, ActionKind.Retorqued).Removed(140, 850, Gasket, examinedGood: true)));
    }

    [Fact]
    public void Not_examined_found_failed_or_found_later_there_is_nothing_to_list()
    {
        Assert.Empty(Listed(Leaking.Removed(120, 812, Gasket, RemovalReason.WithSisters)));
        Assert.Empty(Listed(Leaking.Removed(120, 812, Gasket, RemovalReason.Failed)));
        Assert.Empty(Listed(new InventedAircraft().Installed(1, 500, Gasket).Removed(100, 800, Gasket, examinedGood: true)
            .Installed(100, 800, Gasket).Found(120, 812, Gasket, Condition.LeakTrace)));
    }

    [Fact] // A gasket fails by leaking or coming apart and not by corrosion; an accepted trace is no defect.
    public void A_condition_that_fails_no_such_part_and_an_accepted_one_are_no_contradiction()
    {
        InventedAircraft In() => new InventedAircraft().Installed(1, 500, Gasket).Good(80, 705, Gasket);
        Assert.Empty(Listed(In().Found(120, 812, Gasket, Condition.LeakTrace, grade: FindingGrade.Accepted).Removed(120, 812, Gasket, examinedGood: true)));
        Assert.DoesNotContain(Condition.Looseness, Records.Layouts.ShippedKinds.Get("gasket").Failures);
        Assert.Empty(Listed(In().Found(120, 812, Gasket, Condition.Looseness).Removed(120, 812, Gasket, examinedGood: true)));
    }

    [Fact] // The other source's leak of day 122 was merged into that of day 120; by itself it was found after the removal.
    public void A_merged_finding_counts_on_the_day_of_the_one_that_stands()
    {
        InventedAircraft Told() => Leaking
            .Found(122, 812, Gasket, Condition.LeakTrace, id: "told", source: "sheets")
            .Removed(120, 812, Gasket, examinedGood: true).Installed(120, 812, Gasket);
        Assert.Equal(2, Listed(Told().Merged("cards", "leak", "sheets", "told")).Single().Evidence.Count(k => k.SourceRecordId is "leak" or "told"));
    }

    [Fact] // Taken back, either is not in the history.
    public void It_ends_when_either_record_is_taken_back()
    {
        Assert.Empty(Listed(Leaking));
        Assert.Empty(Listed(new InventedAircraft().Installed(1, 500, Gasket).Good(80, 705, Gasket).Removed(120, 812, Gasket, examinedGood: true)));
    }
}

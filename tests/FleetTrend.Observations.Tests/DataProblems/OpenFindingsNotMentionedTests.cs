using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.DataProblems;

/// <summary>An open finding that a later look does not mention. What is listed follows from the records written in the test.</summary>
public sealed class OpenFindingsNotMentionedTests
{
    private static InventedAircraft Monitored => new InventedAircraft().Good(10, 100, Weld)
        .Found(20, 200, Weld, Condition.Crack, id: "crack").Did(20, 200, Weld, ActionKind.Monitored);

    private static List<DataProblem> Listed(InventedAircraft aircraft) =>
        [.. aircraft.Observe().Problems.Where(p => p.Kind == DataProblemKind.OpenFindingNotMentioned)];

    [Fact]
    public void A_good_look_at_a_crack_that_is_watched_is_listed_and_leaves_it_open()
    {
        var seen = Monitored.Good(40, 300, Weld).Observe();
        var problem = Assert.Single(seen.Problems);
        Assert.Equal((DataProblemKind.OpenFindingNotMentioned, Day(40)), (problem.Kind, problem.Date));
        Assert.Contains("Crack at exhaust/cyl-3/flange-weld was found on 2025-01-21", problem.Description, StringComparison.Ordinal);
        Assert.Contains("2025-02-10", problem.Description, StringComparison.Ordinal);
        Assert.Equal("crack", problem.Evidence[0].SourceRecordId);
        Assert.Equal(2, problem.Evidence.Count);
        Assert.Null(Assert.Single(seen.Events).ClosedDate);
    }

    [Fact] // The look found corrosion there and says nothing of the crack, with or without an action on it.
    public void A_look_that_found_something_else_is_listed_too()
    {
        Assert.Single(Listed(Monitored.Good(40, 300, Weld).Found(40, 300, Weld, Condition.Corrosion)));
        Assert.Single(Listed(new InventedAircraft().Good(10, 100, Weld).Found(20, 200, Weld, Condition.Crack)
            .Good(40, 300, Weld).Found(40, 300, Weld, Condition.Corrosion)));
    }

    [Fact] // Two were open; one was found again.
    public void Of_two_open_cracks_the_one_that_was_not_found_again_is_listed()
    {
        var aircraft = Monitored.Found(20, 200, Weld, Condition.Crack, id: "second").Good(40, 300, Weld).Found(40, 300, Weld, Condition.Crack);
        Assert.Single(Listed(aircraft));
    }

    [Fact]
    public void Found_again_accepted_or_acted_on_the_same_day_it_is_mentioned()
    {
        Assert.Empty(Listed(Monitored.Good(40, 300, Weld).Found(40, 300, Weld, Condition.Crack)));
        Assert.Empty(Listed(Monitored.Good(40, 300, Weld).Found(40, 300, Weld, Condition.Crack, grade: FindingGrade.Accepted)));
        Assert.Empty(Listed(Monitored.Good(40, 300, Weld).Did(40, 300, Weld, ActionKind.Monitored)));
        Assert.Empty(Listed(Monitored.Good(40, 300, Weld).Did(40, 300, Weld, ActionKind.WeldRepaired)));
        Assert.Empty(Listed(Monitored.Good(40, 300, Weld).Removed(40, 300, Weld)));
    }

    [Fact] // The look of the day of the finding is the finding's own; one that did not examine the place says nothing.
    public void Only_a_later_look_that_examined_the_place_can_leave_it_out()
    {
        Assert.Empty(Listed(Monitored.Good(20, 200, Weld)));
        Assert.Empty(Listed(Monitored.NotExamined(40, 300, Weld)));
        Assert.Empty(Listed(Monitored.Good(40, 300, Gasket)));
        Assert.Empty(Listed(Monitored.Found(40, 300, Weld, Condition.Corrosion))); // a squawk, no inspection
    }

    [Fact] // Repaired on day 30, so nothing was open on day 40.
    public void After_the_action_that_closed_it_nothing_is_left_to_mention() =>
        Assert.Empty(Listed(Monitored.Did(30, 250, Weld, ActionKind.WeldRepaired).Good(40, 300, Weld)));

    [Fact] // Repaired on day 60: on day 40 it was still there.
    public void An_action_after_the_look_does_not_explain_it() =>
        Assert.Single(Listed(Monitored.Good(40, 300, Weld).Did(60, 400, Weld, ActionKind.WeldRepaired)));

    [Fact] // The sheet of day 21 tells of the crack of day 20 again and was merged into it, and so is its look.
    public void The_look_of_a_merged_finding_is_that_of_the_one_that_stands()
    {
        InventedAircraft Told() => Monitored
            .Examined("sheets", 21, 200, Weld).Found(21, 200, Weld, Condition.Crack, id: "told", source: "sheets");
        Assert.Empty(Listed(Told().Merged("cards", "crack", "sheets", "told")));
        Assert.Single(Listed(Told().Merged("cards", "crack", "sheets", "told").Good(40, 300, Weld)));
    }

    [Fact] // Taken back, a record is not in the history: without the look there is no problem, without the finding none either.
    public void It_ends_when_either_record_is_taken_back()
    {
        Assert.Empty(Listed(Monitored));
        Assert.Empty(Listed(new InventedAircraft().Good(10, 100, Weld).Did(20, 200, Weld, ActionKind.Monitored).Good(40, 300, Weld)));
    }

    [Fact] // One problem for a crack, however many looks pass it over; its evidence changes when it was seen again between.
    public void Further_looks_add_to_the_one_problem_and_open_it_again_only_after_it_was_seen()
    {
        var once = Assert.Single(Listed(Monitored.Good(40, 300, Weld)));
        var twice = Assert.Single(Listed(Monitored.Good(40, 300, Weld).Good(60, 400, Weld)));
        Assert.Equal((once.Identity, once.Fingerprint), (twice.Identity, twice.Fingerprint));
        Assert.Contains("and 1 more does not mention it", twice.Description, StringComparison.Ordinal);
        var again = Assert.Single(Listed(Monitored.Good(40, 300, Weld).Found(60, 400, Weld, Condition.Crack).Good(80, 500, Weld)));
        Assert.Equal(once.Identity, again.Identity);
        Assert.NotEqual(once.Fingerprint, again.Fingerprint);
    }
}

using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Findings;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.DataProblems;

/// <summary>Rule 10: nothing is recorded before it has happened. A day of grace: somewhere it is tomorrow already.</summary>
public sealed class DatedInTheFutureTests
{
    [Theory] // Dated day 40.
    [InlineData(40, 40, false, 1)]
    [InlineData(39, 40, false, 1)] // entered on what was day 39 by UTC
    [InlineData(38, 39, true, 0)] // not yet: left out
    [InlineData(38, 40, true, 1)] // the day has come; the slip is still one
    [InlineData(38, 900, true, 1)]
    public void A_record_that_came_in_before_its_day_is_listed_and_counts_once_the_day_has_come(int accepted, int asOf, bool listed, int events)
    {
        var seen = new InventedAircraft().Good(10, 100, Weld).Found(40, 130, Weld, Condition.Crack, acceptedDay: accepted).Observe(asOf);
        Assert.Equal(listed ? [DataProblemKind.InTheFuture] : Array.Empty<DataProblemKind>(), seen.Problems.Select(p => p.Kind));
        Assert.Equal(events, seen.Events.Count);
    }

    [Fact]
    public void It_is_one_problem_before_and_after_its_day()
    {
        var aircraft = new InventedAircraft().Found(40, 130, Weld, Condition.Crack, acceptedDay: 38);
        Assert.Equal(Assert.Single(aircraft.Observe(39).Problems).Identity, Assert.Single(aircraft.Observe(41).Problems).Identity);
    }
}

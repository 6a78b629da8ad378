using FleetTrend.Observations.DataProblems;
using FleetTrend.Observations.Lives;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Installations;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.Histories;

/// <summary>Whole histories of invented aircraft, each worked through by hand above its test.</summary>
public sealed class WorkedHistoriesTests
{
    // One weld, looked at every 100 h, no start recorded, so that it is watched from the first look on.
    //
    //   day  hours  what                              by hand
    //     5    100  good                              exposure starts
    //    40    200  crack 6 mm, stop-drilled          event 1 in (100, 200], closed by the drill
    //    75    300  crack 4 mm, monitored             event 2 in (200, 300], after the drill at 200, stays open
    //   110    400  crack 9 mm                        event 2 again, grown
    //   112    402  weld-repaired                     event 2 closed
    //   150    500  good
    //   185    600  crack, stack replaced             event 3 in (500, 600], after the weld at 402, closed; renewed
    //   220    700  good                              exposure ends: 600 h, 7 looks
    //   240    760  meter read                        60 h since the last look count for nothing here
    //
    // Three events in 600 h.
    [Fact]
    public void A_weld_that_cracks_again_and_again()
    {
        var seen = new InventedAircraft()
            .Good(5, 100, Weld)
            .Good(40, 200, Weld).Found(40, 200, Weld, Condition.Crack, 6).Did(40, 200, Weld, ActionKind.StopDrilled)
            .Good(75, 300, Weld).Found(75, 300, Weld, Condition.Crack, 4).Did(75, 300, Weld, ActionKind.Monitored)
            .Good(110, 400, Weld).Found(110, 400, Weld, Condition.Crack, 9)
            .Did(112, 402, Weld, ActionKind.WeldRepaired)
            .Good(150, 500, Weld)
            .Good(185, 600, Weld).Found(185, 600, Weld, Condition.Crack, 5).Did(185, 600, Weld, ActionKind.Replaced)
            .Good(220, 700, Weld)
            .Read(240, 760)
            .Observe(asOf: 250);

        var exposure = Assert.Single(seen.Exposures);
        Assert.Equal((100, 700, 7), (exposure.From.Value, exposure.To.Value, exposure.LookCount));
        Assert.Equal(
            [(100, 200, 1, null, null), (200, 300, 2, ActionKind.StopDrilled, 200), (500, 600, 3, ActionKind.WeldRepaired, 402)],
            seen.Events.Select(e => (e.LastGood!.Value.Value, e.Found.Value, e.Ordinal, e.SinceAction, e.SinceActionHours?.Value)));
        Assert.Equal([ActionKind.StopDrilled, ActionKind.WeldRepaired, ActionKind.Replaced], seen.Events.Select(e => e.ClosedBy));
        Assert.Equal([4, 9], seen.Events[1].Sizes.Select(s => s.Millimetres));
        Assert.Empty(seen.Lives);
        Assert.Empty(seen.Problems);
    }

    // Two exhaust gaskets. That of cylinder 3 went in at 1000 h, before the records are complete; nothing is known of that of cylinder 1.
    //
    //   day  hours  cylinder 3                                   cylinder 1
    //  -200   1000  installed new
    //    10   1150  good: enters at age 150                      good
    //    50   1250  good: age 250                                could not be examined
    //    90   1350  leak: failed in (250, 350]; new one in       good, renewed with its sister: age unknown, taken out good
    //   130   1450  good                                         good: age 100
    //   170   1550  good                                         leak: failed in (100, 200]; re-torqued and kept
    //   210   1650  good: age 300                                good; no second life of the same part
    //   230   1700  meter read: the part in cylinder 3 has 350 h now
    [Fact]
    public void Two_gaskets_one_of_unknown_age()
    {
        var seen = new InventedAircraft()
            .Installed(-200, 1000, Gasket)
            .Good(10, 1150, Gasket, OtherGasket)
            .Good(50, 1250, Gasket).Inspected(50, 1250, LookState.CouldNotExamine, OtherGasket)
            .Good(90, 1350, Gasket, OtherGasket).Found(90, 1350, Gasket, Condition.LeakTrace)
            .Removed(90, 1350, Gasket, RemovalReason.Failed).Installed(90, 1350, Gasket)
            .Removed(90, 1350, OtherGasket, RemovalReason.WithSisters).Installed(90, 1350, OtherGasket)
            .Good(130, 1450, Gasket, OtherGasket)
            .Good(170, 1550, Gasket, OtherGasket).Found(170, 1550, OtherGasket, Condition.LeakTrace).Did(170, 1550, OtherGasket, ActionKind.Retorqued)
            .Good(210, 1650, Gasket, OtherGasket)
            .Read(230, 1700)
            .Observe(asOf: 240);

        Assert.Equal(
            [(OtherGasket, LifeEnding.RemovedGood, LifeExclusion.AgeUnknown), (OtherGasket, LifeEnding.Failed, null),
             (Gasket, LifeEnding.Failed, null), (Gasket, LifeEnding.InService, (LifeExclusion?)null)],
            seen.Lives.Select(l => (l.Location, l.Ending, l.Exclusion)));
        Assert.Equal(
            [new Statistics.Lives.Life(100, 200, 0), new Statistics.Lives.Life(250, 350, 150), new Statistics.Lives.Life(300, double.PositiveInfinity, 0)],
            seen.Lives.Select(l => l.ForFit()).OfType<Statistics.Lives.Life>());
        Assert.Equal(350, seen.Lives[3].AgeNow!.Value.Value);

        Assert.Equal([(OtherGasket, 500, 5), (Gasket, 500, 6)], seen.Exposures.Select(e => (e.Location, e.Duration.Value, e.LookCount)));
        Assert.Equal(
            [(OtherGasket, 1450, 1550, ActionKind.Retorqued), (Gasket, 1250, 1350, (ActionKind?)ActionKind.Replaced)],
            seen.Events.Select(e => (e.Location, e.LastGood!.Value.Value, e.Found.Value, e.ClosedBy)));
        Assert.Empty(seen.Problems);
    }

    // A weld on an aircraft that moved from base north to base south on day 100, with a new meter on day 60.
    //
    //   day  meter  in service  what
    //     0   5000        5000  good: exposure starts
    //    50               5170  good; the sheet also names a place that the layout does not have: listed
    //    60                     meter changed at 5200, the new one starts at 0: from now on add 5200
    //   100    150        5350  moved: the first 350 h are north's
    //   120   2000        7200  1850 h in 20 days: a wrong digit, listed and left aside
    //   140    250        5450  crack, in (5170, 5450], of the hours of south; exposure ends: 100 h are south's
    //   150               5480  weld-repaired: the latest hours known
    [Fact]
    public void A_moved_aircraft_with_a_new_meter_and_a_wrong_digit()
    {
        var seen = new InventedAircraft(described: false).Described("cards", 0, null, (0, "north", "four"), (100, "south", "four"))
            .Read(0, 5000).Good(0, 5000, Weld)
            .Good(50, 5170, Weld, "exhaust/cyl-7/flange-weld")
            .MeterChanged(60, 5200, 0)
            .Read(100, 150)
            .Read(120, 2000)
            .Read(140, 250).Good(140, 5450, Weld).Found(140, 5450, Weld, Condition.Crack)
            .Did(150, 5480, Weld, ActionKind.WeldRepaired)
            .Observe(asOf: 160);

        Assert.Equal([("north", 350, 2), ("south", 100, 1)], seen.Exposures.Select(e => (e.Base, e.Duration.Value, e.LookCount)));
        var crack = Assert.Single(seen.Events);
        Assert.Equal(("south", 5170, 5450, ActionKind.WeldRepaired), (crack.Base, crack.LastGood!.Value.Value, crack.Found.Value, crack.ClosedBy!.Value));
        Assert.Equal(new HoursOnDate(Day(150), Records.Hours.From(5480)), seen.Latest);
        Assert.Equal(new HoursOnDate(Day(140), Records.Hours.From(5450)), seen.LatestInspection);
        Assert.Equal(
            [(DataProblemKind.LocationNotInLayout, Day(50)), (DataProblemKind.TooManyHoursPerDay, Day(120))],
            seen.Problems.Select(p => (p.Kind, p.Date)));
    }
}

using FleetTrend.Observations.DataProblems;

namespace FleetTrend.Observations.Tests.DataProblems;

/// <summary>Rule 10: the meter that goes ends where it was read last, the one that comes starts where it is read first, within 24 h a day.</summary>
public sealed class MeterChangesAddUpTests
{
    [Theory] // Last reading of the old meter: 1480 on day 10; the change is on day 20.
    [InlineData(1480, true)] // not flown
    [InlineData(1479.9, true)] // 0.1 h is rounding
    [InlineData(1479.8, false)] // the old meter ran backwards
    [InlineData(1744, true)] // 11 days, both ends flown: 264 h
    [InlineData(1744.1, false)]
    public void The_old_meter_ends_at_or_above_its_last_reading(double oldHours, bool fits)
    {
        var seen = new InventedAircraft().Read(10, 1480).MeterChanged(20, oldHours, 0).Observe();
        Assert.Equal(!fits, seen.Problems.Any(p => p.Kind == DataProblemKind.MeterChangeMismatch));
    }

    [Theory] // The new meter starts at 20 on day 20.
    [InlineData(20, 20, true)]
    [InlineData(20, 19.8, false)] // read on the day of the change, below its start
    [InlineData(21, 68, true)] // 2 days: 48 h
    [InlineData(21, 68.1, false)]
    [InlineData(30, 1490, false)] // the old meter went on: there was no change
    public void The_new_meter_is_read_at_or_above_its_start(int day, double reading, bool fits)
    {
        var seen = new InventedAircraft().Read(10, 1480).MeterChanged(20, 1480, 20).Read(day, reading).Observe();
        Assert.Equal(!fits, seen.Problems.Any(p => p.Kind == DataProblemKind.MeterChangeMismatch));
    }

    [Fact] // Two sources tell of one change: the second would need a meter that gained 1500 h on the day it was new.
    public void A_change_told_twice_is_listed()
    {
        var seen = new InventedAircraft().Read(10, 1480).MeterChanged(20, 1500, 0).MeterChanged(20, 1500, 0).Read(30, 40).Observe();
        var problem = Assert.Single(seen.Problems, p => p.Kind == DataProblemKind.MeterChangeMismatch);
        Assert.Contains("0.0 h on 2025-01-21 and 1500.0 h on 2025-01-21", problem.Description, StringComparison.Ordinal);
        Assert.Equal(2, problem.Evidence.Count);
    }

    [Fact]
    public void Two_changes_one_after_the_other_fit()
    {
        var seen = new InventedAircraft().MeterChanged(20, 1500, 0).MeterChanged(60, 100, 20).Observe();
        Assert.Empty(seen.Problems);
    }

    [Fact] // More records on either side change the words and not what it is.
    public void The_problem_keeps_its_identity()
    {
        var first = new InventedAircraft().Read(10, 1480).MeterChanged(20, 1400, 0).Observe();
        var later = new InventedAircraft().Read(10, 1480).MeterChanged(20, 1400, 0).Read(21, 300).Observe();
        var before = Assert.Single(first.Problems, p => p.Kind == DataProblemKind.MeterChangeMismatch);
        var after = Assert.Single(later.Problems, p => p.Kind == DataProblemKind.MeterChangeMismatch);
        Assert.Equal(before.Identity, after.Identity);
        Assert.NotEqual(before.Description, after.Description);
    }
}

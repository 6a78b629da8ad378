using FleetTrend.Observations.DataProblems;
using FleetTrend.Records;
using FleetTrend.Records.Findings;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.Rules;

/// <summary>Rule 10. Hours by hand: meter value plus what the old meters had counted; straight lines between known days.</summary>
public sealed class HoursAreCheckedTests
{
    private static readonly DataProblemKind[] None = [];

    [Fact] // 1500 on the old meter when the new one starts at 0; 80 on the new one is 1580.
    public void A_meter_change_carries_the_old_total_forward()
    {
        var seen = new InventedAircraft().Read(10, 1480).MeterChanged(20, 1500, 0).Read(30, 40).Read(50, 80).Observe();
        Assert.Equal(1580, seen.Latest!.Hours.Value);
        Assert.Empty(seen.Problems);
    }

    [Fact] // Two changes: 1500 - 0, then 100 - 20, so 50 on the third meter is 50 + 1500 + 80 = 1630.
    public void Offsets_add_up_over_meter_changes()
    {
        var seen = new InventedAircraft().Read(10, 1480).MeterChanged(20, 1500, 0).MeterChanged(60, 100, 20).Read(60, 22).Read(80, 50).Observe();
        Assert.Equal(1630, seen.Latest!.Hours.Value);
        Assert.Empty(seen.Problems);
    }

    [Fact]
    public void Readings_going_backwards_without_a_meter_change_are_one_problem_and_spoil_nothing()
    {
        var seen = new InventedAircraft().Read(10, 1480).Read(20, 1500).Read(30, 1510).Read(40, 5).Read(50, 12).Observe();
        var problem = Assert.Single(seen.Problems);
        Assert.Equal(DataProblemKind.HoursBackwards, problem.Kind);
        Assert.Equal(2, problem.Evidence.Count);
        Assert.Equal(1510, seen.Latest!.Hours.Value);
    }

    [Fact] // One digit too many: 14900 on day 20 between 1480 and 1510.
    public void A_reading_that_means_more_than_24_h_a_day_is_listed_and_left_aside()
    {
        var seen = new InventedAircraft().Read(10, 1480).Read(20, 14900).Read(30, 1510).Observe();
        Assert.Equal(DataProblemKind.TooManyHoursPerDay, Assert.Single(seen.Problems).Kind);
        Assert.Equal(1510, seen.Latest!.Hours.Value);
    }

    [Theory]
    [InlineData(34.0, false)]
    [InlineData(34.1, true)]
    public void Twenty_four_hours_a_day_are_the_limit(double next, bool listed)
    {
        var problems = new InventedAircraft().Read(10, 10).Read(11, next).Observe().Problems;
        Assert.Equal(listed ? [DataProblemKind.TooManyHoursPerDay] : None, problems.Select(p => p.Kind));
    }

    [Theory] // The meter says 100 on day 10 and 200 on day 30; a visit between may give 90 to 210.
    [InlineData(90, false)]
    [InlineData(89.9, true)]
    [InlineData(210, false)]
    [InlineData(210.1, true)]
    public void A_visit_may_differ_from_the_readings_by_ten_hours(double hours, bool listed)
    {
        var seen = new InventedAircraft().Read(10, 100).Read(30, 200).Good(20, hours, Weld).Observe();
        Assert.Equal(listed ? [DataProblemKind.HoursDisagreeWithReadings] : None, seen.Problems.Select(p => p.Kind));
    }

    [Fact] // 112 written for 812 on day 30: half way from day 20 (700) to day 40 (900) is 800.
    public void A_visit_whose_hours_cannot_be_true_is_kept_with_the_hours_of_the_days_around_it()
    {
        var seen = new InventedAircraft().Good(10, 600, Weld).Good(20, 700, Weld).Found(30, 112, Weld, Condition.Crack).Good(40, 900, Gasket).Observe();
        Assert.Equal(DataProblemKind.HoursBackwards, Assert.Single(seen.Problems).Kind);
        Assert.Contains("800.0 h", seen.Problems[0].Description, StringComparison.Ordinal);
        Assert.Equal(800, Assert.Single(seen.Events).Found.Value);
        Assert.Equal(200, seen.Exposures.Single(e => e.Location == Weld).Duration.Value);
    }

    [Fact]
    public void On_a_day_with_an_inspection_its_hours_hold_and_others_are_listed()
    {
        var seen = new InventedAircraft().Good(10, 600, Weld).Good(30, 812.4, Gasket).Found(30, 811, Weld, Condition.Crack).Observe();
        Assert.Equal(DataProblemKind.HoursDisagreeWithReadings, Assert.Single(seen.Problems).Kind);
        Assert.Equal(Hours.From(812.4), Assert.Single(seen.Events).Found);

        Assert.Empty(new InventedAircraft().Good(10, 600, Weld).Good(30, 812.4, Gasket).Found(30, 812.3, Weld, Condition.Crack).Observe().Problems);
    }

    [Fact]
    public void The_latest_hours_come_from_readings_and_visits_alike()
    {
        Assert.Equal(640, new InventedAircraft().Read(10, 600).Good(30, 640, Weld).Observe().Latest!.Hours.Value);
        Assert.Equal(660, new InventedAircraft().Good(30, 640, Weld).Read(40, 660).Observe().Latest!.Hours.Value);
        Assert.Null(new InventedAircraft().Observe().Latest);
        Assert.Null(new InventedAircraft().Read(10, 600).Observe().LatestInspection);
    }
}

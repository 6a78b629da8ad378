using FleetTrend.Observations.DataProblems;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.DataProblems;

/// <summary>Rule 10: a visit may differ from what the readings allow by 10 h, and an aircraft flies at most 24 h a day.</summary>
public sealed class HoursBesideReadingsTests
{
    [Theory] // Read 100 on day 10: two days later at most 148, and 10 for tolerance.
    [InlineData(158, false)]
    [InlineData(158.1, true)]
    public void A_visit_after_the_last_reading_is_held_against_it(double hours, bool listed)
    {
        var seen = new InventedAircraft().Read(10, 100).Good(12, hours, Weld).Observe();
        Assert.Equal(listed, seen.Problems.Any(p => p.Kind == DataProblemKind.HoursDisagreeWithReadings));
    }

    [Theory] // Read 200 on day 12: two days before at least 152, less 10 for tolerance.
    [InlineData(142, false)]
    [InlineData(141.9, true)]
    public void A_visit_before_the_first_reading_is_held_against_it(double hours, bool listed)
    {
        var seen = new InventedAircraft().Good(10, hours, Weld).Read(12, 200).Observe();
        Assert.Equal(listed, seen.Problems.Any(p => p.Kind == DataProblemKind.HoursDisagreeWithReadings));
    }
}

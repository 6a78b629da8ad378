using FleetTrend.Observations;
using FleetTrend.Records;

namespace FleetTrend.Trends.Expectations;

/// <summary>How much of what a look closes came after a day.</summary>
internal static class ShareAfter
{
    /// <summary>The share, in [0, 1], by the hours flown.</summary>
    /// <param name="look">The look.</param>
    /// <param name="lastDay">The last day before.</param>
    /// <param name="hours">Hours of the aircraft.</param>
    public static double Of(WatchedLook look, DateOnly lastDay, HoursByDay hours)
    {
        if (look.Date <= lastDay)
            return 0;
        if (look.Since >= lastDay)
            return 1;
        var (from, to, cut) = (On(look.Since), On(look.Date), On(lastDay));
        return to > from ? Math.Clamp((to - cut) / (to - from), 0, 1) : 1;

        double On(DateOnly day) => (hours.On(day) ?? Hours.Zero).Value;
    }
}

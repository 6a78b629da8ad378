using FleetTrend.Observations;

namespace FleetTrend.Trends.Airframes;

/// <summary>The fleet table.</summary>
internal static class FleetLines
{
    private const int RecentDays = 90;

    /// <summary>A line per aircraft, in the order given.</summary>
    public static IEnumerable<FleetLine> Of(IEnumerable<AircraftObservations> observations, DateOnly asOf) =>
        observations.Select(o => new FleetLine
        {
            Registration = o.Registration,
            Base = o.Base,
            TypeGroup = o.TypeGroup,
            RetiredDate = o.RetiredDate,
            LatestHours = o.Latest?.Hours.Value,
            LatestDate = o.Latest?.Date,
            HoursSinceInspection = o.Latest is { } latest && o.LatestInspection is { } inspection
                ? Math.Max(0, (latest.Hours - inspection.Hours).Value)
                : null,
            LatestInspectionDate = o.LatestInspection?.Date,
            RecentEvents = o.Events.Count(e => e.FoundDate > asOf.AddDays(-RecentDays) && e.FoundDate <= asOf),
            OpenEvents = o.Events.Count(e => e.ClosedDate is null),
        });
}

using FleetTrend.Observations;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records;
using FleetTrend.Statistics.Rates;
using FleetTrend.Trends.Groups;

namespace FleetTrend.Trends.Locations;

/// <summary>Places of one aircraft where a condition came back with no renewal between.</summary>
internal static class RepeatLocations
{
    private const string Method =
        "events over those expected at the rate of the other aircraft there, exact conditional limits (Przyborowski and Wilenski 1940); "
        + "picked because it repeats, so that the limits describe and do not test";

    /// <summary>All such places, most repeats first.</summary>
    public static IReadOnlyList<RepeatLocation> Of(
        IReadOnlyList<AircraftObservations> observations, IReadOnlyDictionary<string, TypeGroupObservations> groups, double confidence) =>
        [.. observations
            .SelectMany(o => o.Events
                .GroupBy(e => (e.Location, e.Condition))
                .Select(g => Repeat(o, [.. InOrder(g)], groups, confidence)))
            .OfType<RepeatLocation>()
            .OrderByDescending(Repeats)
            .ThenBy(r => r.Expected ?? 0)
            .ThenBy(r => r.Registration, StringComparer.Ordinal)
            .ThenBy(r => r.Location, StringComparer.Ordinal)
            .ThenBy(r => r.Condition)];

    /// <summary>Events that came after the first one: two cracks at the first look are no repeat.</summary>
    public static int Repeats(RepeatLocation repeat) => repeat.Events.Count(e => e.FoundHours > repeat.Events[0].FoundHours);

    private static IEnumerable<LocationEvent> InOrder(IEnumerable<LocationEvent> events) => events
        .OrderBy(e => e.Found)
        .ThenBy(e => e.FoundDate)
        .ThenBy(e => e.Ordinal)
        .ThenBy(e => string.Join('|', e.Evidence), StringComparer.Ordinal);

    private static RepeatLocation? Repeat(
        AircraftObservations aircraft, List<LocationEvent> events, IReadOnlyDictionary<string, TypeGroupObservations> groups, double confidence)
    {
        var run = events.Where(e => e.RenewedAt is null).ToList();
        if (run.Count == 0 || run[^1].Found == run[0].Found)
            return null;

        var last = run[^1];
        var location = groups[last.TypeGroup].At(last.Location);
        var tenths = WatchedTenths(aircraft, last.Location, events.Max(e => e.RenewedAt));
        var others = location.Aircraft.Where(a => a.Registration != aircraft.Registration).ToList();
        var (othersEvents, othersTenths) = (others.Sum(a => a.Count(last.Condition)), others.Sum(a => a.ExposureTenths));
        return new RepeatLocation
        {
            Registration = aircraft.Registration,
            Base = aircraft.Base,
            TypeGroup = last.TypeGroup,
            Location = last.Location,
            Kind = last.Kind,
            Condition = last.Condition,
            Events = [.. run.Select(e => new RepeatEvent(
                e.FoundDate, e.Found.Value, e.SinceActionHours is { } action ? (e.Found - action).Value : null, e.ClosedBy))],
            ExposureHours = tenths / 10.0,
            Expected = othersTenths > 0 ? othersEvents * (tenths / (double)othersTenths) : null,
            Ratio = Ratio(run.Count(e => !e.PresentAtEntry), tenths, othersEvents, othersTenths, confidence),
            Evidence = [.. run.SelectMany(e => e.Evidence).Distinct()],
        };
    }

    /// <summary>Hours watched since the last renewal after an event, or since the start of the records.</summary>
    private static long WatchedTenths(AircraftObservations aircraft, string location, Hours? since) => aircraft.Exposures
        .Where(e => e.Location == location)
        .Sum(e => Math.Max(0, (e.To - (since is { } start && start > e.From ? start : e.From)).Tenths));

    private static Figure Ratio(int events, long tenths, int othersEvents, long othersTenths, double confidence)
    {
        var (hours, othersHours) = (tenths / 10.0, othersTenths / 10.0);
        var figure = new Figure { Confidence = confidence, Unit = "", Events = events, ExposureHours = hours, Method = Method };
        if (hours == 0 || othersHours == 0)
            return figure with { NotEnoughData = "not enough data: no other aircraft was watched there, or this one for no hours" };
        return RateRatio.Estimate(events, hours, othersEvents, othersHours, confidence).Match(
            r => figure with
            {
                Value = Figures.Finite(r.Ratio),
                Lower = r.Interval.Lower,
                Upper = Figures.Finite(r.Interval.Upper),
                NotEnoughData = double.IsFinite(r.Ratio)
                    ? null
                    : "not enough data: the others had no event there, so that only a lower limit exists",
            },
            reason => figure with { NotEnoughData = $"not enough data: {reason.Events} events" });
    }
}

using System.Globalization;
using FleetTrend.Observations;
using FleetTrend.Records.Findings;
using FleetTrend.Statistics.Lives;
using FleetTrend.Trends.Groups;
using FleetTrend.Trends.Growth;
using FleetTrend.Trends.PartLives;
using FleetTrend.Trends.Recurrences;

namespace FleetTrend.Trends.Traces;

/// <summary>
/// The rows behind a figure as tables that <c>fleettrend analyze</c> reads, and from which it gives the same figure: comma-separated lines, the first of which
/// names the columns. They are counted by the code that counts for the figure.
/// </summary>
public static class TraceTables
{
    /// <summary>Behind a rate (<see cref="Rates.RateTrend"/>): a line per aircraft, its events and its watched hours.</summary>
    /// <param name="typeGroup">The type group.</param>
    /// <param name="aircraft">Its aircraft, as observed.</param>
    /// <param name="location">The location; null for all of the kind.</param>
    /// <param name="kind">The kind; null for all where the condition makes sense.</param>
    /// <param name="condition">The condition.</param>
    public static IEnumerable<string> Rate(string typeGroup, IReadOnlyList<AircraftObservations> aircraft, string? location, string? kind, Condition condition)
    {
        var places = TypeGroupObservations.Sort(typeGroup, aircraft).Locations
            .Where(l => location is not null ? l.Location == location : kind is not null ? l.Kind.Name == kind : l.CanHave(condition));
        var counts = places.SelectMany(l => l.Aircraft).GroupBy(a => a.Registration, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => (Unit: g.Key, Events: g.Sum(a => a.Count(condition)), Tenths: g.Sum(a => a.ExposureTenths)))
            .Where(c => c.Tenths > 0); // unwatched hours are in no rate
        return counts.Select(c => $"{Field(c.Unit)},{c.Events},{Hours(c.Tenths / 10.0)}").Prepend("unit,events,exposure");
    }

    /// <summary>Behind the lives of a kind of part (<see cref="PartLifeTrend"/>): a line per life that takes part, or several alike.</summary>
    /// <param name="typeGroup">The type group.</param>
    /// <param name="aircraft">Its aircraft, as observed.</param>
    /// <param name="kind">The kind.</param>
    /// <param name="atBase">The base; null for all.</param>
    public static IEnumerable<string> Lives(string typeGroup, IReadOnlyList<AircraftObservations> aircraft, string kind, string? atBase)
    {
        var fitted = FittedLives.From(aircraft.SelectMany(a => a.Lives)
            .Where(l => l.TypeGroup == typeGroup && l.Kind.Name == kind && (atBase is null || l.Base == atBase)));
        return fitted.Lives.Select(Line).Prepend("lower,upper,entry,count");

        static string Line(Life life) =>
            $"{Hours(life.Lower)},{(double.IsPositiveInfinity(life.Upper) ? "" : Hours(life.Upper))},{Hours(life.Entry)},{life.Count}";
    }

    /// <summary>Behind a mean cumulative function (<see cref="RecurrenceTrend"/>): per aircraft when it was watched, and its events, by time in
    /// service.</summary>
    /// <param name="typeGroup">The type group.</param>
    /// <param name="aircraft">Its aircraft, as observed.</param>
    /// <param name="location">The location.</param>
    /// <param name="condition">The condition.</param>
    public static IEnumerable<string> Recurrence(string typeGroup, IReadOnlyList<AircraftObservations> aircraft, string location, Condition condition)
    {
        var place = TypeGroupObservations.Sort(typeGroup, aircraft).Locations.FirstOrDefault(l => l.Location == location);
        return (place?.Aircraft ?? []).SelectMany(Lines).Prepend("unit,time,what");

        IEnumerable<string> Lines(AircraftAtLocation at)
        {
            var unit = RecurrenceAnalysis.Unit(at, condition);
            var name = Field(at.Registration);
            return unit.Windows.SelectMany(w => new[] { $"{name},{Hours(w.Start)},start", $"{name},{Hours(w.Stop)},end" })
                .Concat(unit.EventTimes.Select(t => $"{name},{Hours(t)},event"));
        }
    }

    /// <summary>Behind the growth of a kind of place (<see cref="GrowthTrend"/>): a line per span of an aircraft, hours watched in it and what came.</summary>
    /// <param name="typeGroup">The type group.</param>
    /// <param name="aircraft">Its aircraft, as observed.</param>
    /// <param name="kind">The kind.</param>
    /// <param name="condition">The condition.</param>
    /// <param name="isCalendar">Whether by the calendar, in years before the as-of day, rather than by time in service, in hours.</param>
    /// <param name="asOf">The as-of day.</param>
    public static IEnumerable<string> Growth(
        string typeGroup, IReadOnlyList<AircraftObservations> aircraft, string kind, Condition condition, bool isCalendar, DateOnly asOf)
    {
        var places = TypeGroupObservations.Sort(typeGroup, aircraft).Locations.Where(l => l.Kind.Name == kind);
        var spans = new GrowthSpans(places, aircraft.ToDictionary(a => a.Registration, a => a.Hours, StringComparer.Ordinal), asOf);
        return (isCalendar ? spans.ByCalendar(condition) : spans.ByHours(condition))
            .SelectMany(a => a.Spans.Select(s => $"{Field(a.Registration)},{Time(s.Start)},{Time(s.Stop)},{Hours(s.Exposure)},{s.Events}"))
            .Prepend("unit,start,stop,exposure,events");

        string Time(double time) => isCalendar ? time.ToString("0.0000", CultureInfo.InvariantCulture) : Hours(time);
    }

    private static string Hours(double hours) => hours.ToString("0.0", CultureInfo.InvariantCulture);

    // Registration marks have no comma or quote; a quoted field is right all the same.
    private static string Field(string text) => text.AsSpan().IndexOfAny(",\"") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}

using FleetTrend.Observations.DataProblems;
using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Lives;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Observations.Timelines;
using FleetTrend.Records;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations;

/// <summary>Turns the stored records of aircraft into what statistics need: the one place where raw records are read for numbers.</summary>
/// <remarks>
/// <para>
/// A look is an aircraft, a location and a day. It is bad where at least one finding of that day is a defect, and good where an
/// inspection examined the location, or a finding was accepted, and there is no defect. A location not examined, not
/// examinable, or without a line adds nothing.
/// </para>
/// <para>Inside a day the look comes first, then actions, then removals, then installations.</para>
/// <para>
/// Records dated before the watch start tell what is installed, how old it is and what is open; they are neither exposure nor
/// events. The order of the lists of a history means nothing.
/// </para>
/// </remarks>
public static class Observe
{
    /// <summary>Observations of a fleet as of the moment of its history; parts with serial numbers take their hours from aircraft to aircraft.</summary>
    /// <param name="history">What is known. Records dated after its as-of day (UTC) are listed as problems and left out.</param>
    /// <exception cref="ArgumentException">An aircraft has no airframe.</exception>
    public static FleetObservations Fleet(FleetHistory history)
    {
        ArgumentNullException.ThrowIfNull(history);
        var index = new LayoutIndex(history.Layouts);
        var asOf = DateOnly.FromDateTime(history.AsOf.UtcDateTime);
        var fleet = new List<(AircraftRecords Records, AircraftHours Hours)>(history.Aircraft.Count);
        foreach (var aircraft in history.Aircraft)
        {
            var records = AircraftRecords.Select(aircraft, index, asOf);
            fleet.Add((records, AircraftHours.Reconcile(records)));
        }

        var carried = SerialNumbers.Carry(fleet);
        LookAlikeMarks.List([.. fleet.Select(f => f.Records)]);
        return new FleetObservations
        {
            AsOf = history.AsOf,
            Aircraft = [.. fleet.Select(f => Aircraft(f.Records, f.Hours, carried))],
            OtherProblems = [.. history.RetractionsAlone.OrderBy(r => r.Key, RecordKeyOrder.Instance).Select(Alone)],
            FlagClosings = history.FlagClosings,
        };
    }

    private static DataProblem Alone(Recorded<Retraction> retraction) => new(
        DataProblemKind.RetractionWithoutRecord,
        "",
        DateOnly.FromDateTime(retraction.AcceptTime.UtcDateTime),
        RetractionSentence.Write(retraction.Key, retraction.Content.Reason),
        [retraction.Key]);

    private static AircraftObservations Aircraft(
        AircraftRecords records, AircraftHours hours, IReadOnlyDictionary<RecordKey, CarriedHours> carried)
    {
        var description = records.Description;
        var exposures = new List<LocationExposure>();
        var events = new List<LocationEvent>();
        var lives = new List<ObservedLife>();
        PossibleDuplicates.List(records);
        foreach (var timeline in LocationTimeline.Build(records, hours, carried))
        {
            var watched = LocationExposures.Build(timeline, description, hours);
            exposures.AddRange(watched);
            events.AddRange(LocationEvents.Build(timeline, records, watched));
            lives.AddRange(LocationLives.Build(timeline, records, hours));
        }

        InstallationsOverParts.List(records, records.InstallationsOverParts);
        var lastInspection = records.Inspections.Count == 0 ? (DateOnly?)null : records.Inspections[^1].Content.InspectionDate;
        return new AircraftObservations
        {
            Registration = description.Registration,
            Base = description.On(records.AsOf).Base,
            TypeGroup = description.On(records.AsOf).TypeGroup,
            RetiredDate = description.RetiredDate,
            Hours = hours.ByDay,
            Latest = hours.ByDay.Latest,
            LatestInspection = lastInspection is { } date ? new HoursOnDate(date, hours.OfVisit(date)) : null,
            Exposures = exposures,
            Events = events,
            Lives = lives,
            Problems = [.. records.Problems.OrderBy(p => p.Date).ThenBy(p => p.Kind).ThenBy(p => p.Description, StringComparer.Ordinal)],
        };
    }
}

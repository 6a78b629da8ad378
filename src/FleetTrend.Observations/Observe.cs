using FleetTrend.Observations.DataProblems;
using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Lives;
using FleetTrend.Observations.Looks;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Observations.Timelines;
using FleetTrend.Records;
using FleetTrend.Records.Practices;
using FleetTrend.Records.Sources;
using FleetTrend.Records.Spares;

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
        var aircraft = Aircraft(history, _ => true);
        return new FleetObservations
        {
            AsOf = history.AsOf,
            Aircraft = aircraft,
            OtherProblems = OtherProblems(aircraft.Select(a => a.Mark), history.RetractionsAlone),
            FlagClosings = history.FlagClosings,
            PracticeChanges = ObservePracticeChanges(history.PracticeChanges),
            StockCounts = ObserveStockCounts(history.StockCounts, history.AsOf),
        };
    }

    /// <summary>Observations of some aircraft of a history, in its order.</summary>
    /// <param name="history">What is known of them, and of every aircraft with which one of them has shared a serial number.</param>
    /// <param name="isWanted">Whether an aircraft is to be observed, by its registration.</param>
    /// <exception cref="ArgumentException">An aircraft has no airframe.</exception>
    public static IReadOnlyList<AircraftObservations> Aircraft(FleetHistory history, Predicate<string> isWanted)
    {
        ArgumentNullException.ThrowIfNull(history);
        ArgumentNullException.ThrowIfNull(isWanted);
        var index = new LayoutIndex(history.Layouts);
        var asOf = DateOnly.FromDateTime(history.AsOf.UtcDateTime);
        var fleet = new List<(AircraftRecords Records, AircraftHours Hours)>(history.Aircraft.Count);
        foreach (var aircraft in history.Aircraft)
        {
            var records = AircraftRecords.Select(aircraft, index, asOf);
            fleet.Add((records, AircraftHours.Reconcile(records)));
        }

        var carried = SerialNumbers.Carry(fleet);
        return
        [
            .. history.Aircraft.Zip(fleet)
                .Where(f => isWanted(f.First.Registration))
                .Select(f => Aircraft(f.Second.Records, f.Second.Hours, carried) with { NextDate = NextDates.After(asOf, f.First) }),
        ];
    }

    /// <summary>Problems that no single aircraft shows: marks easily taken for each other, and retractions whose record never came.</summary>
    /// <param name="marks">Every aircraft of the fleet, in any order.</param>
    /// <param name="retractionsAlone">Retractions of which no aircraft is known.</param>
    public static IReadOnlyList<DataProblem> OtherProblems(
        IEnumerable<AircraftMark> marks, IEnumerable<Recorded<Retraction>> retractionsAlone) =>
        [
            .. LookAlikeMarks.Find([.. marks.OrderBy(m => m.Registration, StringComparer.Ordinal)]),
            .. retractionsAlone.OrderBy(r => r.Key, RecordKeyOrder.Instance).Select(Alone),
        ];

    /// <summary>Practice changes, in the order in which they come.</summary>
    /// <param name="changes">Those that stand.</param>
    public static IReadOnlyList<ObservedPracticeChange> ObservePracticeChanges(IEnumerable<Recorded<PracticeChange>> changes) =>
        [.. changes.Select(c => new ObservedPracticeChange(c.Key, c.Content))];

    /// <summary>The newest stock count of each base and part number, by base and part number; one dated after the day does not count yet.</summary>
    /// <param name="counts">Those that stand.</param>
    /// <param name="asOf">The moment of knowledge.</param>
    public static IReadOnlyList<ObservedStockCount> ObserveStockCounts(IEnumerable<Recorded<StockCount>> counts, DateTimeOffset asOf) =>
    [
        .. counts.Where(c => c.Content.CountDate <= DateOnly.FromDateTime(asOf.UtcDateTime))
            .GroupBy(c => (c.Content.Base, c.Content.PartNumber))
            .Select(g => g.OrderBy(c => c.Content.CountDate).ThenBy(c => c.Key, RecordKeyOrder.Instance).Last())
            .OrderBy(c => c.Content.Base, StringComparer.Ordinal).ThenBy(c => c.Content.PartNumber, StringComparer.Ordinal)
            .Select(c => new ObservedStockCount(c.Key, c.Content)),
    ];

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
        var timelines = LocationTimeline.Build(records, hours, carried);
        foreach (var timeline in timelines)
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
            WatchStartDate = description.WatchStartDate,
            DescribedBy = description.Keys,
            Hours = hours.ByDay,
            Latest = hours.ByDay.Latest,
            LatestInspection = lastInspection is { } date ? new HoursOnDate(date, hours.OfVisit(date)) : null,
            Exposures = exposures,
            Events = events,
            Lives = lives,
            Looks = AircraftLooks.Build(timelines, records),
            Visits = AircraftLooks.Visits(records, hours),
            Problems = [.. records.Problems.OrderBy(p => p.Date).ThenBy(p => p.Kind).ThenBy(p => p.Description, StringComparer.Ordinal)],
        };
    }
}

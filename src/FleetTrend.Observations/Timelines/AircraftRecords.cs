using FleetTrend.Observations.DataProblems;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Readings;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Timelines;

/// <summary>The records of one aircraft that count: ordered, and without those that are listed as problems instead.</summary>
internal sealed class AircraftRecords
{
    private AircraftRecords(AircraftDescription aircraft, DateOnly asOf, List<DataProblem> problems)
    {
        Description = aircraft;
        AsOf = asOf;
        Problems = problems;
    }

    public AircraftDescription Description { get; }

    public DateOnly AsOf { get; }

    public List<DataProblem> Problems { get; }

    /// <summary>Found while the lives are put together; listed once all of them are.</summary>
    public List<InstallationOverPart> InstallationsOverParts { get; } = [];

    public required IReadOnlyList<Recorded<MeterReading>> Readings { get; init; }

    public required IReadOnlyList<Recorded<MeterChange>> MeterChanges { get; init; }

    public required IReadOnlyList<Recorded<Installation>> Installations { get; init; }

    public required IReadOnlyList<Recorded<Removal>> Removals { get; init; }

    /// <summary>Inspections, each with the lines of locations that the layout of the day has.</summary>
    public required IReadOnlyList<Recorded<Inspection>> Inspections { get; init; }

    public required IReadOnlyList<Recorded<Finding>> Findings { get; init; }

    public required IReadOnlyList<Recorded<CorrectiveAction>> Actions { get; init; }

    /// <summary>Findings that count as seen at the look of another source's, by decision of a person.</summary>
    public required IReadOnlyList<MergedFinding> Merges { get; init; }

    public static AircraftRecords Select(AircraftHistory history, LayoutIndex layouts, DateOnly asOf)
    {
        var problems = new List<DataProblem>();
        var aircraft = AircraftDescription.Unite(history, layouts, asOf, problems);
        var selection = new Selection(aircraft, asOf, problems);
        var findings = selection.Located(history.Findings, "A finding", f => f.FoundDate, f => f.Location);
        return new AircraftRecords(aircraft, asOf, problems)
        {
            Readings = selection.Dated(history.Readings, "A meter reading", r => r.ReadingDate),
            MeterChanges = selection.Dated(history.MeterChanges, "A meter change", c => c.ChangeDate),
            Installations = selection.Located(history.Installations, "An installation", i => i.InstallationDate, i => i.Location),
            Removals = selection.Located(history.Removals, "A removal", r => r.RemovalDate, r => r.Location),
            Inspections = [.. selection.Dated(history.Inspections, "An inspection", i => i.InspectionDate).Select(selection.KnownLines)],
            Findings = findings,
            Actions = selection.Located(history.Actions, "An action", a => a.ActionDate, a => a.Location),
            Merges = MergedFinding.Select(history.Registration, history.Merges, findings, problems),
        };
    }

    /// <summary>Adds a problem of this aircraft.</summary>
    public void List(
        DataProblemKind kind, DateOnly date, string description, IReadOnlyList<RecordKey> evidence, IReadOnlyList<RecordKey>? subject = null) =>
        Problems.Add(new DataProblem(kind, Description.Registration, date, description, evidence) { Subject = subject });

    private sealed class Selection(AircraftDescription aircraft, DateOnly asOf, List<DataProblem> problems)
    {
        /// <summary>Lists of lines that their layout has whole. Alike cards share one list, so that most are looked through once.</summary>
        private readonly HashSet<(IReadOnlyList<LocationLook> Lines, string TypeGroup)> known = [];

        public IReadOnlyList<Recorded<T>> Dated<T>(IReadOnlyList<Recorded<T>> records, string what, Func<T, DateOnly> dateOf) =>
            [.. records.Where(r => InTime(r, what, dateOf(r.Content))).OrderBy(r => dateOf(r.Content)).ThenBy(r => r.Key, RecordKeyOrder.Instance)];

        public IReadOnlyList<Recorded<T>> Located<T>(
            IReadOnlyList<Recorded<T>> records, string what, Func<T, DateOnly> dateOf, Func<T, string> locationOf) =>
            [.. Dated(records, what, dateOf).Where(r => InLayout(r, what, dateOf(r.Content), locationOf(r.Content)))];

        public Recorded<Inspection> KnownLines(Recorded<Inspection> inspection)
        {
            var date = inspection.Content.InspectionDate;
            var card = (inspection.Content.Looks, aircraft.On(date).TypeGroup);
            if (known.Contains(card))
                return inspection;
            var unknown = inspection.Content.Looks.Where(l => aircraft.Kind(l.Location, date) is null).Select(l => l.Location).ToList();
            if (unknown.Count == 0)
            {
                known.Add(card);
                return inspection;
            }

            problems.Add(NotInLayout("An inspection", date, string.Join(", ", unknown.Order(StringComparer.Ordinal)), inspection.Key));
            var others = inspection.Content.Looks.Where(l => aircraft.Kind(l.Location, date) is not null);
            return inspection with { Content = inspection.Content with { Looks = [.. others] } };
        }

        private bool InTime<T>(Recorded<T> record, string what, DateOnly date)
        {
            if (date > asOf)
            {
                problems.Add(new DataProblem(
                    DataProblemKind.InTheFuture, aircraft.Registration, date, $"{what} is dated {date:O}, after {asOf:O}; it is left out.", [record.Key]));
                return false;
            }

            // Entered with a date that had not come yet: now that the day has passed the record counts, and is no less doubtful.
            var accepted = DateOnly.FromDateTime(record.AcceptTime.UtcDateTime);
            if (date.DayNumber > accepted.DayNumber + 1)
            {
                problems.Add(new DataProblem(
                    DataProblemKind.InTheFuture, aircraft.Registration, date, $"{what} is dated {date:O} but came in on {accepted:O}, before that day; it counts.", [record.Key]));
            }

            if (date > aircraft.RetiredDate)
            {
                problems.Add(new DataProblem(
                    DataProblemKind.AfterRetirement,
                    aircraft.Registration,
                    date,
                    $"{what} is dated {date:O}, but the aircraft left the fleet on {aircraft.RetiredDate:O}; it is left out.",
                    [record.Key]));
                return false;
            }

            return true;
        }

        private bool InLayout<T>(Recorded<T> record, string what, DateOnly date, string location)
        {
            if (aircraft.Kind(location, date) is not null)
                return true;
            problems.Add(NotInLayout(what, date, location, record.Key));
            return false;
        }

        private DataProblem NotInLayout(string what, DateOnly date, string locations, RecordKey key) =>
            new(
                DataProblemKind.LocationNotInLayout,
                aircraft.Registration,
                date,
                $"{what} of {date:O} is about {locations}, which the layout of type group {aircraft.On(date).TypeGroup} does not have; that is left out.",
                [key]);
    }
}

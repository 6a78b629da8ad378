using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Readings;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Tests;

/// <summary>An invented aircraft whose records are written down line by line. Day 0 is 2025-01-01, where its records become complete.</summary>
internal sealed class InventedAircraft
{
    public const string Weld = "exhaust/cyl-3/flange-weld";
    public const string Gasket = "exhaust/cyl-3/gasket";
    public const string OtherGasket = "exhaust/cyl-1/gasket";
    public const string Coupling = "induction/cyl-1/coupling";

    private readonly List<Recorded<Airframe>> airframes = [];
    private readonly List<Recorded<MeterReading>> readings = [];
    private readonly List<Recorded<MeterChange>> meterChanges = [];
    private readonly List<Recorded<Installation>> installations = [];
    private readonly List<Recorded<Removal>> removals = [];
    private readonly List<Recorded<Inspection>> inspections = [];
    private readonly List<Recorded<Finding>> findings = [];
    private readonly List<Recorded<CorrectiveAction>> actions = [];
    private readonly List<FindingMerge> merges = [];
    private readonly string registration;
    private int count;

    public InventedAircraft(string registration = "ZZ-A01", int watchFrom = 0, int? retired = null, bool described = true)
    {
        this.registration = registration;
        if (described)
            Described("cards", watchFrom, retired, (0, "north", "four"));
    }

    /// <summary>Two type groups: "four" has everything, "bare" lacks the coupling.</summary>
    public static IReadOnlyDictionary<string, Layout> Layouts { get; } = new Dictionary<string, Layout>
    {
        ["four"] = new("four-layout", "Invented",
            [new(Weld, ShippedKinds.Get("flange-weld")), new(Gasket, ShippedKinds.Get("gasket")), new(OtherGasket, ShippedKinds.Get("gasket")), new(Coupling, ShippedKinds.Get("coupling"))]),
        ["bare"] = new("bare-layout", "Invented", [new(Weld, ShippedKinds.Get("flange-weld")), new(Gasket, ShippedKinds.Get("gasket")), new(OtherGasket, ShippedKinds.Get("gasket"))]),
    };

    public AircraftHistory History => new()
    {
        Registration = registration,
        Airframes = airframes,
        Readings = readings,
        MeterChanges = meterChanges,
        Installations = installations,
        Removals = removals,
        Inspections = inspections,
        Findings = findings,
        Actions = actions,
        Merges = merges,
    };

    public static DateOnly Day(int day) => new DateOnly(2025, 1, 1).AddDays(day);

    /// <summary>Observations of these aircraft as of a day, in the order given.</summary>
    public static IReadOnlyList<AircraftObservations> Fleet(int asOf, params IEnumerable<AircraftHistory> histories) =>
        Observations.Observe.Fleet(new FleetHistory
        {
            AsOf = new DateTimeOffset(Day(asOf), TimeOnly.MinValue, TimeSpan.Zero),
            Aircraft = [.. histories],
            Layouts = Layouts,
        }).Aircraft;

    public AircraftObservations Observe(int asOf = 1000) => Fleet(asOf, History)[0];

    public InventedAircraft Described(
        string source, int watchFrom = 0, int? retired = null, params (int From, string Base, string TypeGroup)[] assignments) =>
        Add(airframes, new Airframe
        {
            Registration = registration,
            WatchStartDate = Day(watchFrom),
            RetiredDate = retired is { } r ? Day(r) : null,
            Assignments = [.. assignments.Select(a => new Assignment(Day(a.From), a.Base, a.TypeGroup))],
        }, source);

    public InventedAircraft Good(int day, double hours, params string[] locations) => Inspected(day, hours, LookState.Examined, locations);

    public InventedAircraft NotExamined(int day, double hours, params string[] locations) => Inspected(day, hours, LookState.NotExamined, locations);

    public InventedAircraft Examined(string source, int day, double hours, params string[] locations) =>
        Looked(source, day, hours, LookState.Examined, locations);

    public InventedAircraft Inspected(int day, double hours, LookState state, params string[] locations) => Looked("cards", day, hours, state, locations);

    private InventedAircraft Looked(string source, int day, double hours, LookState state, string[] locations) =>
        Add(inspections, new Inspection
        {
            Registration = registration,
            InspectionDate = Day(day),
            TimeInService = Hours.From(hours),
            Occasion = Occasion.HundredHour,
            Looks = [.. locations.Select(l => new LocationLook(l, state))],
        }, source);

    public InventedAircraft Found(
        int day, double hours, string location, Condition condition, double? size = null,
        FindingGrade grade = FindingGrade.Defect, string? id = null, string? sameAs = null, string source = "cards", int? acceptedDay = null, int revision = 1) =>
        Add(findings, new Finding
        {
            Registration = registration,
            Location = location,
            FoundDate = Day(day),
            TimeInService = Hours.From(hours),
            Condition = condition,
            Grade = grade,
            SizeMillimetres = size,
            SameEventAs = sameAs,
        }, source, id, acceptedDay, revision);

    public InventedAircraft Did(int day, double hours, string location, ActionKind kind, double? partHours = null) =>
        Add(actions, new CorrectiveAction
        {
            Registration = registration,
            Location = location,
            ActionDate = Day(day),
            TimeInService = Hours.From(hours),
            Kind = kind,
            PartHours = partHours is { } p ? Hours.From(p) : null,
        });

    public InventedAircraft Installed(int day, double hours, string location, double? partHours = 0, string? serial = null, string source = "cards") =>
        Add(installations, new Installation
        {
            Registration = registration,
            Location = location,
            InstallationDate = Day(day),
            TimeInService = Hours.From(hours),
            PartHours = partHours is { } p ? Hours.From(p) : null,
            SerialNumber = serial,
        }, source);

    public InventedAircraft Removed(
        int day, double hours, string location, RemovalReason reason = RemovalReason.TimeLimit, bool examinedGood = false, string? serial = null) =>
        Add(removals, new Removal
        {
            Registration = registration,
            Location = location,
            RemovalDate = Day(day),
            TimeInService = Hours.From(hours),
            Reason = reason,
            ExaminedGood = examinedGood,
            SerialNumber = serial,
        });

    /// <summary>A person has decided that the finding of the one source is the event of the other's.</summary>
    public InventedAircraft Merged(string keptSource, string keptId, string mergedSource, string mergedId)
    {
        merges.Add(new FindingMerge(keptSource, keptId, mergedSource, mergedId));
        return this;
    }

    public InventedAircraft Read(int day, double meterHours) => Add(readings, new MeterReading(registration, Day(day), Hours.From(meterHours)));

    public InventedAircraft MeterChanged(int day, double oldHours, double newHours) =>
        Add(meterChanges, new MeterChange(registration, Day(day), Hours.From(oldHours), Hours.From(newHours)));

    /// <remarks>All came in long after: day 2000.</remarks>
    private InventedAircraft Add<T>(
        List<Recorded<T>> records, T content, string source = "cards", string? id = null, int? acceptedDay = null, int revision = 1)
    {
        id ??= $"{registration}-{++count:000}";
        var accepted = new DateTimeOffset(Day(acceptedDay ?? 2000), new TimeOnly(12, 0), TimeSpan.Zero);
        records.Add(new Recorded<T>(new RecordKey(source, id, revision), accepted, content));
        return this;
    }
}

using FleetTrend.Contracts.V1;
using FleetTrend.Intake.Rules;
using Google.Type;
using Domain = FleetTrend.Records.Layouts;

namespace FleetTrend.Intake.Tests.Rules;

/// <summary>A record of each kind that breaks no rule; a test changes one thing in it.</summary>
internal static class Valid
{
    public const string Weld = "exhaust/cyl-3/flange-weld";
    public const string Gasket = "exhaust/cyl-3/gasket";

    public static readonly DateOnly Today = new(2026, 3, 1);

    public static readonly IReadOnlyDictionary<string, Domain.LocationKind> Kinds =
        Domain.ShippedKinds.All.ToDictionary(k => k.Name, StringComparer.Ordinal);

    public static ReferenceData Known()
    {
        var locations = new[] { new Domain.Location(Weld, Domain.ShippedKinds.Get("flange-weld")), new Domain.Location(Gasket, Domain.ShippedKinds.Get("gasket")) }
            .ToDictionary(l => l.Path);
        var known = new ReferenceData
        {
            Today = Today,
            Sources = new HashSet<string> { "shop-cards" },
            TypeGroups = new Dictionary<string, IReadOnlyDictionary<string, Domain.Location>> { ["trainer-four"] = locations },
        };
        known.Add("ZZ-A01", locations);
        known.AddBase("North");
        return known;
    }

    public static RecordKey Key() => new() { Source = "shop-cards", SourceRecordId = "card 17", Revision = 1 };

    public static Date Day(int year = 2026, int month = 2, int day = 3) => new() { Year = year, Month = month, Day = day };

    public static Record Aircraft(Action<Aircraft>? change = null) => Make(new Aircraft
    {
        Registration = "ZZ-A01",
        WatchStartDate = Day(2024, 1, 1),
        Assignments =
        {
            new Assignment { FromDate = Day(2024, 1, 1), Base = "North", TypeGroup = "trainer-four" },
            new Assignment { FromDate = Day(2025, 1, 1), Base = "South", TypeGroup = "trainer-four" },
        },
    }, change, (r, c) => r.Aircraft = c);

    public static Record Reading(Action<MeterReading>? change = null) => Make(
        new MeterReading { Registration = "ZZ-A01", ReadingDate = Day(), MeterHours = 812.4 }, change, (r, c) => r.MeterReading = c);

    public static Record MeterChange(Action<MeterChange>? change = null) => Make(
        new MeterChange { Registration = "ZZ-A01", ChangeDate = Day(), OldMeterHours = 812.4, NewMeterHours = 0 },
        change, (r, c) => r.MeterChange = c);

    public static Record Installation(Action<Installation>? change = null) => Make(
        new Installation { Registration = "ZZ-A01", Location = Gasket, InstallationDate = Day(), TimeInServiceHours = 812.4, PartHours = 0 },
        change, (r, c) => r.Installation = c);

    public static Record Removal(Action<Removal>? change = null) => Make(
        new Removal
        {
            Registration = "ZZ-A01",
            Location = Gasket,
            RemovalDate = Day(),
            TimeInServiceHours = 812.4,
            Reason = RemovalReason.TimeLimit,
            ExaminedGood = true,
        }, change, (r, c) => r.Removal = c);

    public static Record Inspection(Action<Inspection>? change = null) => Make(
        new Inspection
        {
            Registration = "ZZ-A01",
            InspectionDate = Day(),
            TimeInServiceHours = 812.4,
            Occasion = Occasion.HundredHour,
            Looks =
            {
                new LocationLook { Location = Weld, State = LookState.Examined, Method = LookMethod.Visual },
                new LocationLook { Location = Gasket, State = LookState.NotExamined },
            },
        }, change, (r, c) => r.Inspection = c);

    public static Record Finding(Action<Finding>? change = null) => Make(
        new Finding
        {
            Registration = "ZZ-A01",
            Location = Weld,
            FoundDate = Day(),
            TimeInServiceHours = 812.4,
            Condition = Condition.Crack,
            SizeMm = 4.5,
            Method = LookMethod.Visual,
            Note = "beside the weld",
        }, change, (r, c) => r.Finding = c);

    public static Record Action(Action<Contracts.V1.Action>? change = null) => Make(
        new Contracts.V1.Action
        {
            Registration = "ZZ-A01",
            Location = Gasket,
            ActionDate = Day(),
            TimeInServiceHours = 812.4,
            Kind = ActionKind.Replaced,
        }, change, (r, c) => r.Action = c);

    public static Record PracticeChange(Action<PracticeChange>? change = null) => Make(
        new PracticeChange
        {
            ChangeDate = Day(),
            Base = "North",
            TypeGroup = "trainer-four",
            Locations = { new ChangedLocation { Location = Gasket }, new ChangedLocation { Location = Weld } },
            PartNumber = "gasket, two layers",
            What = "torque in two passes",
            Why = "gaskets leaked early",
        }, change, (r, c) => r.PracticeChange = c);

    public static Record StockCount(Action<StockCount>? change = null) => Make(
        new StockCount { CountDate = Day(), Base = "North", PartNumber = "gasket, two layers", Quantity = 4, LeadTimeDays = 21 },
        change, (r, c) => r.StockCount = c);

    public static Record Retraction(Action<Record>? change = null)
    {
        var record = new Record { Key = Key(), Retraction = new Retraction { Reason = "entered for the wrong aircraft" } };
        record.Key.Revision = 2;
        change?.Invoke(record);
        return record;
    }

    public static IEnumerable<Record> All() =>
    [
        Aircraft(), Reading(), MeterChange(), Installation(), Removal(), Inspection(), Finding(), Action(), Retraction(), PracticeChange(), StockCount(),
    ];

    private static Record Make<T>(T content, Action<T>? change, Action<Record, T> put)
    {
        change?.Invoke(content);
        var record = new Record { Key = Key() };
        put(record, content);
        return record;
    }
}

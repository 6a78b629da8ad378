using FleetTrend.Contracts.V1;
using Google.Type;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>Records of one invented shop, as an integrator would push them.</summary>
internal static class ShopCards
{
    public const string Source = "shop-cards";
    public const string Title = "Cards of the shop";
    public const string TypeGroup = "trainer-four";
    public const string Weld = "exhaust/cyl-1/flange-weld";
    public const string Gasket = "exhaust/cyl-1/gasket";

    private static readonly DateOnly Start = new(2024, 1, 1);

    /// <summary>Registers the source, a layout and a type group.</summary>
    public static async Task RegisterAsync(ApiServer server)
    {
        await server.Sources.CreateSourceAsync(new CreateSourceRequest { Source = new Source { Name = Source, Title = Title } });
        await server.Layouts.CreateLayoutAsync(new CreateLayoutRequest
        {
            Layout = new Layout
            {
                Name = "one-cylinder",
                Title = "One cylinder, for tests",
                Locations =
                {
                    new Location { Path = Weld, Kind = "flange-weld" },
                    new Location { Path = Gasket, Kind = "gasket" },
                },
            },
        });
        await server.Layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest
        {
            TypeGroup = new TypeGroup { Name = TypeGroup, Title = "Trainer", Layout = "one-cylinder" },
        });
    }

    public static RecordKey Key(string id, int revision = 1) => new() { Source = Source, SourceRecordId = id, Revision = revision };

    public static Date Day(int after) => ToWire(Start.AddDays(after));

    public static Date ToWire(DateOnly day) => new() { Year = day.Year, Month = day.Month, Day = day.Day };

    public static Record Aircraft(string registration) => new()
    {
        Key = Key($"aircraft {registration}"),
        Aircraft = new Aircraft
        {
            Registration = registration,
            WatchStartDate = Day(0),
            Assignments = { new Assignment { FromDate = Day(0), Base = "North", TypeGroup = TypeGroup } },
        },
    };

    public static Record Finding(string id, string registration = "ZZ-A01", int day = 10, double hours = 812.4, string location = Weld) => new()
    {
        Key = Key(id),
        Finding = new Finding
        {
            Registration = registration,
            Location = location,
            FoundDate = Day(day),
            TimeInServiceHours = hours,
            Condition = Condition.Crack,
            SizeMm = 4.5,
        },
    };

    public static Record Reading(string id, string registration, int day, double hours) => new()
    {
        Key = Key(id),
        MeterReading = new MeterReading { Registration = registration, ReadingDate = Day(day), MeterHours = hours },
    };
}

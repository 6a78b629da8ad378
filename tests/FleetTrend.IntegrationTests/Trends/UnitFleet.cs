using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>
/// Published units as a fleet of their own: each unit is an aircraft with one location, watched from the day its part went
/// in new at 0 h, and with more places beside it where they are given. One hour of a unit is <c>hoursPerDay</c>-th of a day, so that nothing flies more than a
/// day has.
/// </summary>
internal sealed class UnitFleet(
    string typeGroup, string kind, string mark, double hoursPerDay, DateOnly? start = null, (string Path, string Kind)[]? more = null)
{
    public const string Location = "unit/place";

    private static readonly DateOnly Start = new(2010, 1, 1);

    private readonly List<Record> records = [];
    private int units;
    private int pushed;

    public IReadOnlyList<Record> Records => records;

    private IEnumerable<(string Path, string Kind)> Places => [(Location, kind), .. more ?? []];

    private DateOnly First => start ?? Start;

    /// <summary>The day on which units have so many hours.</summary>
    public static DateOnly DayOf(double hours, double hoursPerDay) => Start.AddDays((int)Math.Ceiling(hours / hoursPerDay));

    /// <summary>A new unit; its registration.</summary>
    /// <param name="partNumber">Part number of what went in.</param>
    public string Unit(string partNumber = "")
    {
        var registration = $"{mark}-{++units:000}";
        records.Add(new Record
        {
            Key = Key(),
            Aircraft = new Aircraft
            {
                Registration = registration,
                WatchStartDate = ShopCards.ToWire(First),
                Assignments = { new Assignment { FromDate = ShopCards.ToWire(First), Base = "test stand", TypeGroup = typeGroup } },
            },
        });
        Installed(registration, Location, partNumber);
        return registration;
    }

    /// <summary>A new part that went in on the first day.</summary>
    public void Installed(string registration, string location, string partNumber) => records.Add(new Record
    {
        Key = Key(),
        Installation = new Installation
        {
            Registration = registration,
            Location = location,
            InstallationDate = ShopCards.ToWire(First),
            TimeInServiceHours = 0,
            PartHours = 0,
            PartNumber = partNumber,
        },
    });

    public void Looked(string registration, double hours) => records.Add(new Record
    {
        Key = Key(),
        Inspection = new Inspection
        {
            Registration = registration,
            InspectionDate = Day(hours),
            TimeInServiceHours = hours,
            Occasion = Occasion.Other,
            Looks = { Places.Select(p => new LocationLook { Location = p.Path, State = LookState.Examined }) },
        },
    });

    public void Found(string registration, double hours, Condition condition, string location = Location) => records.Add(new Record
    {
        Key = Key(),
        Finding = new Finding
        {
            Registration = registration,
            Location = location,
            FoundDate = Day(hours),
            TimeInServiceHours = hours,
            Condition = condition,
        },
    });

    public void Done(string registration, double hours, ActionKind kind, string location = Location) => records.Add(new Record
    {
        Key = Key(),
        Action = new Contracts.V1.Action
        {
            Registration = registration,
            Location = location,
            ActionDate = Day(hours),
            TimeInServiceHours = hours,
            Kind = kind,
        },
    });

    /// <summary>Creates the layout and the type group, and pushes everything through the stream.</summary>
    public async Task PushAsync(ApiServer server)
    {
        await server.Layouts.CreateLayoutAsync(new CreateLayoutRequest
        {
            Layout = new Layout { Name = typeGroup, Title = typeGroup, Locations = { Places.Select(p => new Location { Path = p.Path, Kind = p.Kind }) } },
        });
        await server.Layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest
        {
            TypeGroup = new TypeGroup { Name = typeGroup, Title = typeGroup, Layout = typeGroup },
        });

        await PushMoreAsync(server);
    }

    /// <summary>Pushes what came since through the stream.</summary>
    public async Task PushMoreAsync(ApiServer server)
    {
        var fresh = records[pushed..];
        pushed = records.Count;
        using var call = (await server.IntakeOfAsync("published")).StreamRecords();
        var acknowledged = Task.Run(async () =>
        {
            var count = 0;
            while (await call.ResponseStream.MoveNext(CancellationToken.None))
            {
                Assert.True(call.ResponseStream.Current.Outcome.State == RecordState.Accepted, $"{call.ResponseStream.Current}");
                count++;
            }

            return count;
        });
        foreach (var (index, record) in fresh.Index())
            await call.RequestStream.WriteAsync(new StreamRecordsRequest { Sequence = index, Record = record });
        await call.RequestStream.CompleteAsync();
        Assert.Equal(fresh.Count, await acknowledged);
    }

    private RecordKey Key() => new() { Source = "published", SourceRecordId = $"{mark} {records.Count}", Revision = 1 };

    private Google.Type.Date Day(double hours) => ShopCards.ToWire(First.AddDays((int)Math.Ceiling(hours / hoursPerDay)));
}

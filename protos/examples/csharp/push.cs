#!/usr/bin/env dotnet
#:project ../../../src/FleetTrend.Client
#:project ../../../src/FleetTrend.Contracts

// Pushes an aircraft, an inspection and a finding, and says what became of each. Outside this tree one line takes the
// place of the two above: #:package FleetTrend.Client@0.1.0
// FLEETTREND_SERVER and FLEETTREND_KEY say where to and as whom. Run: dotnet run push.cs
using FleetTrend.Client;
using FleetTrend.Contracts.V1;
using Google.Rpc;
using Date = Google.Type.Date;

const string Weld = "exhaust/cyl-3/flange-weld";
var day = new Date { Year = 2026, Month = 2, Day = 3 };
Record[] records =
[
    new()
    {
        Key = Key("aircraft ZZ-A01"),
        Aircraft = new Aircraft
        {
            Registration = "ZZ-A01",
            WatchStartDate = new Date { Year = 2025, Month = 1, Day = 1 },
            Assignments = { new Assignment { FromDate = new Date { Year = 2025, Month = 1, Day = 1 }, Base = "North", TypeGroup = "trainer-four" } },
        },
    },
    new()
    {
        Key = Key("card 17"),
        Inspection = new Inspection
        {
            Registration = "ZZ-A01",
            InspectionDate = day,
            TimeInServiceHours = 812.4,
            Occasion = Occasion.HundredHour,
            // A line for every location of the worksheet, the good ones too; two are enough to show it.
            Looks =
            {
                new LocationLook { Location = Weld, State = LookState.Examined, Method = LookMethod.Visual },
                new LocationLook { Location = "exhaust/cyl-4/gasket", State = LookState.CouldNotExamine },
            },
        },
    },
    new()
    {
        Key = Key("card 17/1"),
        Finding = new Finding
        {
            Registration = "ZZ-A01", Location = Weld, FoundDate = day, TimeInServiceHours = 812.4, Condition = Condition.Crack, SizeMm = 4.5,
        },
    },
];

using var channel = FleetTrendChannel.Open(new ConnectionOptions
{
    Address = new Uri(Environment.GetEnvironmentVariable("FLEETTREND_SERVER") ?? "http://127.0.0.1:5081"),
    Key = Environment.GetEnvironmentVariable("FLEETTREND_KEY"),
});
var refused = 0;
try
{
    await foreach (var pushed in new RecordPusher(channel).PushAsync(records.ToAsyncEnumerable()))
    {
        var reason = pushed.Outcome.Error?.GetDetail<ErrorInfo>()?.Reason;
        Console.WriteLine($"{pushed.Record.Key.SourceRecordId}: {pushed.Outcome.State} {reason} {pushed.Outcome.Error?.Message}".TrimEnd());
        refused += pushed.Outcome.State == RecordState.Refused ? 1 : 0;
    }
}
catch (PushStoppedException stopped) // a key that is not taken, or a server that did not come back
{
    Console.Error.WriteLine($"{stopped.Reason} {stopped.Message}; {stopped.Unacknowledged.Count} to send again.");
    return 3;
}

return refused == 0 ? 0 : 1;

// The identifier is yours; made once and kept, it makes a push repeatable.
static RecordKey Key(string id) => new() { Source = "shop-cards", SourceRecordId = id, Revision = 1 };

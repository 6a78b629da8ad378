using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;

namespace FleetTrend.IntegrationTests.Requests;

/// <summary>A mark, a location, a type group or a code that is not there is refused, or waits, with the nearest one that is.</summary>
[Collection(SharedPostgres.Name)]
public sealed class NearestTests(PostgresFixture postgres) : IAsyncLifetime
{
    private ApiServer server = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { ShopCards.Aircraft("ZZ-A01"), ShopCards.Aircraft("ZZ-B07") } });
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task Of_a_mark_that_is_not_registered()
    {
        Assert.Equal(
            "finding.registration: must be a registered aircraft; got \"ZZ-AO1\"; did you mean ZZ-A01?",
            (await PushAsync(ShopCards.Finding("f", registration: "ZZ-AO1"))).Error.Message);
        Assert.Equal(
            "finding.registration: must be a registered aircraft; got \"QX-555\"", (await PushAsync(ShopCards.Finding("f", registration: "QX-555"))).Error.Message);
    }

    [Fact]
    public async Task Of_a_mark_that_a_held_record_waits_for()
    {
        var held = await PushAsync(ShopCards.Finding("f", registration: "ZZ-BO7"), hold: true);
        Assert.Equal(RecordState.Held, held.State);
        Assert.EndsWith("did you mean ZZ-B07?", held.Awaits.Message);
        Assert.EndsWith("did you mean ZZ-B07?", (await server.Intake.ListHeldRecordsAsync(new ListHeldRecordsRequest())).Records.Single().Awaits.Message);
    }

    [Fact]
    public async Task Of_a_location_and_a_type_group()
    {
        var outcome = await PushAsync(ShopCards.Finding("f", location: "exhaust/cyl-1/flange-wled"));
        Assert.EndsWith("did you mean exhaust/cyl-1/flange-weld?", outcome.Error.Message);
        var aircraft = ShopCards.Aircraft("ZZ-C01");
        aircraft.Aircraft.Assignments[0].TypeGroup = "trainer-for";
        Assert.EndsWith("did you mean trainer-four?", (await PushAsync(aircraft)).Error.Message);
    }

    [Fact]
    public async Task Of_a_code_that_has_no_meaning()
    {
        await new CodeService.CodeServiceClient(server.Channel).SetCodeAsync(
            new SetCodeRequest { Code = new SourceCode { Source = ShopCards.Source, Code = "EX1-FW", Location = ShopCards.Weld } });
        var finding = ShopCards.Finding("f");
        (finding.Finding.Location, finding.Finding.LocationCode) = ("", "EX1FW");
        Assert.Equal(
            "finding.location_code: must be a code of source 'shop-cards' that has a meaning; SetCode gives it one; got \"EX1FW\"; did you mean EX1-FW?",
            (await PushAsync(finding)).Awaits.Message);
    }

    private async Task<RecordOutcome> PushAsync(Record record, bool hold = false) =>
        (await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { record }, HoldUnregistered = hold })).Outcomes.Single();
}

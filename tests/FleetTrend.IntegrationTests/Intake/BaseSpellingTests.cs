using FleetTrend.Contracts.V1;
using Google.Rpc;
using Grpc.Core;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>One base has one spelling: North and north would be two bases in every number, and two mails.</summary>
[Collection(SharedPostgres.Name)]
public sealed class BaseSpellingTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Refused = "BASE_SPELLED_OTHERWISE";

    private ApiServer server = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task A_base_that_differs_only_in_case_from_a_known_one_is_refused_and_the_known_one_named()
    {
        Assert.Equal([""], await PushAsync(At("ZZ-A01", 1, "North")));
        Assert.Equal([Refused], await PushAsync(At("ZZ-A02", 1, "north")));
        var refusal = (await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { At("ZZ-A02", 1, "north") } })).Outcomes[0].Error;
        var violation = Assert.Single(refusal.GetDetail<BadRequest>()!.FieldViolations);
        Assert.Equal("aircraft.assignments[0].base", violation.Field);
        Assert.Contains("North", violation.Description, StringComparison.Ordinal);
        Assert.Contains("north", violation.Description, StringComparison.Ordinal);
        Assert.Equal([""], await PushAsync(At("ZZ-A02", 1, "Northfield")));
    }

    [Fact]
    public async Task Within_one_call_and_within_one_aircraft_the_first_spelling_counts()
    {
        Assert.Equal(["", Refused], await PushAsync(At("ZZ-A01", 1, "South"), At("ZZ-A02", 1, "SOUTH")));
        Assert.Equal([Refused], await PushAsync(At("ZZ-A03", 1, "East", "EAST")));
    }

    [Fact]
    public async Task A_base_is_respelled_by_pushing_all_of_its_aircraft_together_and_not_otherwise()
    {
        Assert.Equal(["", ""], await PushAsync(At("ZZ-A01", 1, "north"), At("ZZ-A02", 1, "north")));
        Assert.Equal([Refused], await PushAsync(At("ZZ-A01", 2, "North"))); // ZZ-A02 is at north
        Assert.Equal(["", ""], await PushAsync(At("ZZ-A01", 2, "North"), At("ZZ-A02", 2, "North")));
        Assert.Equal([""], await PushAsync(At("ZZ-A03", 1, "North"))); // a superseded revision holds nobody up
    }

    [Fact]
    public async Task A_report_of_a_base_that_no_aircraft_has_goes_to_nobody_so_its_recipients_are_refused()
    {
        await PushAsync(At("ZZ-A01", 1, "North"));
        await SetAsync("*", "director@shop.example");
        await SetAsync("North", "shop@shop.example");
        foreach (var (wrong, meant) in new[] { ("north", "did you mean North?"), ("Nort", "did you mean North?"), ("Elsewhere", "must be the base of an aircraft") })
        {
            foreach (var addresses in new[] { new[] { "shop@shop.example" }, [] })
            {
                var refusal = await Assert.ThrowsAsync<RpcException>(() => SetAsync(wrong, addresses));
                Assert.Equal("BASE_NOT_FOUND", refusal.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason);
                Assert.Contains(meant, refusal.Status.Detail, StringComparison.Ordinal);
            }
        }

        Assert.Equal([""], await PushAsync(At("ZZ-A01", 2, "South")));
        await SetAsync("North"); // a base that has no aircraft any more can still be cleared
        Assert.Equal(["*"], (await server.Reports.ListRecipientsAsync(new ListRecipientsRequest())).Recipients.Select(r => r.Base));
    }

    private Task<SetRecipientsResponse> SetAsync(string atBase, params string[] addresses) =>
        server.Reports.SetRecipientsAsync(new SetRecipientsRequest { Base = atBase, Addresses = { addresses } }).ResponseAsync;

    private static Record At(string registration, int revision, params string[] bases)
    {
        var record = ShopCards.Aircraft(registration);
        record.Key.Revision = revision;
        record.Aircraft.Assignments.Clear();
        record.Aircraft.Assignments.AddRange(
            bases.Select((atBase, i) => new Assignment { FromDate = ShopCards.Day(30 * i), Base = atBase, TypeGroup = ShopCards.TypeGroup }));
        return record;
    }

    /// <summary>Why each was refused; empty where it was accepted.</summary>
    private async Task<IEnumerable<string>> PushAsync(params Record[] records)
    {
        var answer = await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { records } });
        return answer.Outcomes.Select(outcome => outcome.State == RecordState.Accepted ? "" : outcome.Error.GetDetail<ErrorInfo>()!.Reason);
    }
}

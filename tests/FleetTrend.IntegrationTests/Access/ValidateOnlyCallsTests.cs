using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.IntegrationTests.Trends;
using FleetTrend.Reports.Tests;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store.Keys;
using Google.Rpc;
using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;
using FlagState = FleetTrend.Contracts.V1.FlagState;

namespace FleetTrend.IntegrationTests.Access;

/// <summary>Calls that write keys, answers and decisions, asked to check only (AIP-163): the same answers and refusals, nothing written.</summary>
[Collection(SharedPostgres.Name)]
public sealed class ValidateOnlyCallsTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Tablet = "tablet";
    private static readonly FindingName Card = new() { Source = ShopCards.Source, SourceRecordId = "card" };
    private static readonly FindingName Twin = new() { Source = Tablet, SourceRecordId = "twin" };

    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact] // A stream says it per message.
    public void Every_call_that_writes_can_be_asked_to_check_only() =>
        Assert.Empty(Contract.Writes.Where(call => call.InputType.FindFieldByName("validate_only") is null).Select(Contract.NameOf));

    [Fact]
    public async Task A_key_that_is_only_checked_is_none_and_one_that_is_revoked_so_goes_on()
    {
        var request = new CreateKeyRequest { Name = "tablet", Source = ShopCards.Source, Scopes = { Scope.RecordsWrite }, ValidateOnly = true };
        var before = await server.CountAsync("api_keys");
        var made = await server.Access.CreateKeyAsync(request);
        Assert.Equal(("", "", "tablet", ShopCards.Source), (made.KeyText, made.Key.KeyId, made.Key.Name, made.Key.Source));
        Assert.Equal([Scope.RecordsWrite], made.Key.Scopes);
        Assert.Null(made.Key.CreateTime);
        request.Source = "nowhere";
        Assert.Equal("SOURCE_NOT_REGISTERED", await ReasonAsync(() => server.Access.CreateKeyAsync(request).ResponseAsync));
        request.Source = "";
        Assert.Equal("FIELD_REQUIRED", await ReasonAsync(() => server.Access.CreateKeyAsync(request).ResponseAsync));
        Assert.Equal(before, await server.CountAsync("api_keys"));

        var key = await server.CreateKeyAsync(null, KeyScope.TrendsRead);
        var id = key.Split('_')[1];
        Assert.NotNull((await server.Access.RevokeKeyAsync(new RevokeKeyRequest { KeyId = id, ValidateOnly = true })).Key.RevokeTime);
        var own = await new AccessService.AccessServiceClient(server.ChannelWith(key)).GetOwnKeyAsync(new GetOwnKeyRequest());
        Assert.Null(own.Key.RevokeTime);
        Assert.Equal("KEY_NOT_FOUND", await ReasonAsync(() => server.Access.RevokeKeyAsync(
            new RevokeKeyRequest { KeyId = "aaaaaaaaaaaa", ValidateOnly = true }).ResponseAsync));
    }

    [Fact]
    public async Task An_answer_to_a_flag_is_checked_and_the_flag_stays_open()
    {
        var snapshot = InventedFleet.Snapshot();
        await server.Services.PublishAsync(snapshot);
        var raised = await server.Services.RaiseAsync(snapshot);
        var id = $"{raised[0].FlagId}";
        var acknowledge = new AcknowledgeFlagRequest { FlagId = id, AcknowledgedBy = "lead", Comment = "seen", ValidateOnly = true };
        var answered = (await server.Flags.AcknowledgeFlagAsync(acknowledge)).Flag;
        Assert.Equal((FlagState.Acknowledged, "lead"), (answered.State, answered.AcknowledgedBy));
        var close = new CloseFlagRequest { FlagId = id, ClosedBy = "lead", Comment = "done", ValidateOnly = true };
        Assert.Equal(FlagState.Closed, (await server.Flags.CloseFlagAsync(close)).Flag.State);
        Assert.All((await server.Flags.ListFlagsAsync(new ListFlagsRequest())).Flags, flag =>
            Assert.Equal((FlagState.Open, ""), (flag.State, flag.AcknowledgedBy)));

        acknowledge.FlagId = "99999";
        Assert.Equal("FLAG_NOT_FOUND", await ReasonAsync(() => server.Flags.AcknowledgeFlagAsync(acknowledge).ResponseAsync));
        close.ValidateOnly = false;
        await server.Flags.CloseFlagAsync(close);
        acknowledge.FlagId = id;
        Assert.Equal("FLAG_IS_CLOSED", await ReasonAsync(() => server.Flags.AcknowledgeFlagAsync(acknowledge).ResponseAsync));
    }

    [Fact]
    public async Task Data_checks_and_merges_are_checked_and_stay_as_they_are()
    {
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { ShopCards.Aircraft("ZZ-A01"), ShopCards.Finding("card") } });
        var twin = ShopCards.Finding("twin", day: 12);
        twin.Key.Source = Tablet;
        await (await server.IntakeOfAsync(Tablet)).PushRecordAsync(new PushRecordRequest { Record = twin });
        await ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services).RunAsync(default);
        var offer = (await server.Checks.ListDataChecksAsync(new ListDataChecksRequest { Kind = DataCheckKind.PossibleDuplicate })).Checks.Single();

        var closed = await server.Checks.CloseDataCheckAsync(
            new CloseDataCheckRequest { CheckId = offer.CheckId, ClosedBy = "lead", Note = "two", ValidateOnly = true });
        Assert.Equal((DataCheckState.Closed, "lead"), (closed.Check.State, closed.Check.ClosedBy));
        var merge = new MergeFindingsRequest { Kept = Card, Merged = Twin, DecidedBy = "lead", Note = "one", ValidateOnly = true };
        var merged = (await server.Checks.MergeFindingsAsync(merge)).Merge;
        Assert.Equal(("", true, "card"), (merged.MergeId, merged.IsMerged, merged.Kept.SourceRecordId));
        var unmerge = new UnmergeFindingsRequest { Merged = Twin, DecidedBy = "lead", Note = "two", ValidateOnly = true };
        Assert.Equal("FINDING_NOT_MERGED", await ReasonAsync(() => server.Checks.UnmergeFindingsAsync(unmerge).ResponseAsync));
        Assert.Equal(offer, (await server.Checks.ListDataChecksAsync(new ListDataChecksRequest { Kind = DataCheckKind.PossibleDuplicate })).Checks.Single());
        Assert.Equal(0, await server.CountAsync("finding_merges"));

        merge.ValidateOnly = false;
        await server.Checks.MergeFindingsAsync(merge);
        var undone = (await server.Checks.UnmergeFindingsAsync(unmerge)).Merge;
        Assert.Equal(("", false), (undone.MergeId, undone.IsMerged));
        Assert.Equal(1, await server.CountAsync("finding_merges"));
        Assert.Equal(1, await server.CountAsync("data_checks where state = 2"));
        (merge.Kept, merge.Merged, merge.ValidateOnly) = (Twin, Card, true);
        Assert.Equal("FINDING_IS_MERGED", await ReasonAsync(() => server.Checks.MergeFindingsAsync(merge).ResponseAsync));
    }

    [Fact]
    public async Task Requests_recipients_and_codes_are_checked_and_not_written()
    {
        await ShopCards.RegisterAsync(server);
        await using (var clear = server.Database.DataSource.CreateCommand("delete from refresh_requests"))
            await clear.ExecuteNonQueryAsync();
        var codes = new CodeService.CodeServiceClient(server.Channel);
        await codes.SetCodeAsync(new SetCodeRequest { Code = new SourceCode { Source = ShopCards.Source, Code = "EX-1", Location = ShopCards.Weld } });
        await codes.DeleteCodeAsync(new DeleteCodeRequest { Source = ShopCards.Source, Kind = CodeKind.Location, Code = "EX-1", ValidateOnly = true });
        Assert.Null((await server.Trends.RequestRefreshAsync(new RequestRefreshRequest { ValidateOnly = true })).RequestTime);
        Assert.Null((await server.Reports.RequestReportAsync(new RequestReportRequest { RequestId = "r1", ValidateOnly = true })).RequestTime);
        var set = await server.Reports.SetRecipientsAsync(new SetRecipientsRequest { Base = "*", Addresses = { "b@shop.example", "a@shop.example" }, ValidateOnly = true });
        Assert.Equal(["a@shop.example", "b@shop.example"], set.Recipients.Addresses);
        Assert.NotEqual("", await ReasonAsync(() => server.Reports.RequestReportAsync(new RequestReportRequest { ValidateOnly = true }).ResponseAsync));

        Assert.Equal(1, await server.CountAsync("source_codes"));
        Assert.Equal(0, await server.CountAsync("refresh_requests"));
        Assert.Equal(0, await server.CountAsync("report_requests"));
        Assert.Equal(0, await server.CountAsync("schedule_recipients"));
    }

    private static async Task<string> ReasonAsync(Func<Task> call) =>
        (await Assert.ThrowsAsync<RpcException>(call)).GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason;
}

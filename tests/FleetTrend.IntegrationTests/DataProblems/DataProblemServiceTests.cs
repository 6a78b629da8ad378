using System.Net.Http.Json;
using System.Text.Json;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Refreshes;
using FleetTrend.Worker.Reports;
using Google.Rpc;
using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.DataProblems;

/// <summary>One crack that two sources recorded, from the offer to the merge and back; checks that people close.</summary>
[Collection(SharedPostgres.Name)]
public sealed class DataProblemServiceTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Tablet = "tablet";
    private static readonly FindingName Card = new() { Source = ShopCards.Source, SourceRecordId = "card" };
    private static readonly FindingName Twin = new() { Source = Tablet, SourceRecordId = "twin" };

    private ApiServer server = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordsAsync(new PushRecordsRequest
        {
            Records = { ShopCards.Aircraft("ZZ-A01"), ShopCards.Aircraft("ZZ-AO1"), ShopCards.Finding("card"), ShopCards.Finding("other", "ZZ-AO1") },
        });
        var twin = ShopCards.Finding("twin", day: 12);
        twin.Key.Source = Tablet;
        await (await server.IntakeOfAsync(Tablet)).PushRecordAsync(new PushRecordRequest { Record = twin });
        await RefreshAsync();
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task A_duplicate_is_offered_and_merged_only_by_a_person_and_earlier_reports_stay()
    {
        var offer = Assert.Single(await ListAsync(DataCheckKind.PossibleDuplicate));
        Assert.Equal((DataCheckState.Open, "ZZ-A01", "2024-1-13"), (offer.State, offer.Registration, $"{offer.ProblemDate.Year}-{offer.ProblemDate.Month}-{offer.ProblemDate.Day}"));
        Assert.Equal(["card", "twin"], offer.RecordKeys.Select(k => k.SourceRecordId).Order(StringComparer.Ordinal));
        Assert.Equal(ProblemRules.Find(DataProblemKind.PossibleDuplicate), offer.Rule);
        await WriteReportAsync(new DateOnly(2026, 1, 5));
        Assert.Equal(["card", "twin"], await EventOfCardAsync()); // found again while open: one event by rule 6, each row listed

        var request = new MergeFindingsRequest { Kept = Card, Merged = Twin, DecidedBy = "lead mechanic", Note = "one crack on two cards" };
        var merge = (await server.Checks.MergeFindingsAsync(request)).Merge;
        Assert.Equal(merge, (await server.Checks.MergeFindingsAsync(request)).Merge);
        var answered = Assert.Single(await ListAsync(DataCheckKind.PossibleDuplicate));
        Assert.Equal((DataCheckState.Closed, "lead mechanic"), (answered.State, answered.ClosedBy));
        Assert.Contains("one crack on two cards", answered.CloseNote, StringComparison.Ordinal);
        await WriteReportAsync(new DateOnly(2026, 1, 12));
        Assert.Equal(["card", "twin"], await EventOfCardAsync());

        await server.Checks.UnmergeFindingsAsync(new UnmergeFindingsRequest { Merged = Twin, DecidedBy = "director", Note = "two, by photo" });
        await WriteReportAsync(new DateOnly(2026, 1, 19));
        Assert.Single(await ListAsync(DataCheckKind.PossibleDuplicate, DataCheckState.Open)); // offered again
        Assert.Equal([false, true], (await server.Checks.ListFindingMergesAsync(new ListFindingMergesRequest())).Merges.Select(m => m.IsMerged));

        var reports = (await server.Reports.ListReportsAsync(new ListReportsRequest { Base = "*" })).Reports;
        Assert.Equal(3, reports.Count);
        foreach (var report in reports)
        {
            var again = await server.Reports.ReproduceReportAsync(new ReproduceReportRequest { ReportId = report.ReportId });
            Assert.True(again.Same, again.Difference);
        }
    }

    [Fact] // Both cards are of one look here: two events until they are merged, one after, two again after the undo, and never otherwise before.
    public async Task Trends_follow_a_merge_within_one_refresh_and_evidence_of_a_moment_before_it_does_not()
    {
        var twin = ShopCards.Finding("twin");
        twin.Key = new RecordKey { Source = Tablet, SourceRecordId = "twin", Revision = 2 };
        await (await server.IntakeOfAsync(Tablet)).PushRecordAsync(new PushRecordRequest { Record = twin });
        await RefreshAsync();
        Assert.Equal(2, await EventsAsync(null));
        var before = (await server.Trends.RequestRefreshAsync(new RequestRefreshRequest())).RequestTime;
        await server.Checks.MergeFindingsAsync(new MergeFindingsRequest { Kept = Card, Merged = Twin, DecidedBy = "lead", Note = "one" });
        await RefreshAsync();
        Assert.Equal(1, await EventsAsync(null));
        Assert.Equal(2, await EventsAsync(before));
        await server.Checks.UnmergeFindingsAsync(new UnmergeFindingsRequest { Merged = Twin, DecidedBy = "lead", Note = "two" });
        await RefreshAsync();
        Assert.Equal(2, await EventsAsync(null));

        async Task<int> EventsAsync(Google.Protobuf.WellKnownTypes.Timestamp? asOf) =>
            (await server.Trends.ListEvidenceAsync(new ListEvidenceRequest { Registration = "ZZ-A01", AsOfTime = asOf })).Rows.Count(r => r.Event is not null);
    }

    [Fact]
    public async Task A_check_is_found_by_either_aircraft_and_closed_with_who_and_how()
    {
        var alike = Assert.Single((await server.Checks.ListDataChecksAsync(new ListDataChecksRequest { Registration = "zz-ao1" })).Checks);
        Assert.Equal((DataCheckKind.LookAlikeMarks, "ZZ-A01", "ZZ-AO1"), (alike.Kind, alike.Registration, alike.OtherRegistration));
        var closing = new CloseDataCheckRequest { CheckId = alike.CheckId, ClosedBy = "director", Note = "both are ours" };
        var closed = (await server.Checks.CloseDataCheckAsync(closing)).Check;
        Assert.Equal(closed, (await server.Checks.CloseDataCheckAsync(closing)).Check);
        Assert.Equal((DataCheckState.Closed, "director", "both are ours"), (closed.State, closed.ClosedBy, closed.CloseNote));
        await RefreshAsync();
        Assert.Equal(DataCheckState.Closed, Assert.Single(await ListAsync(DataCheckKind.LookAlikeMarks)).State);

        closing.Note = "other words";
        Assert.Equal("CHECK_NOT_OPEN", await ReasonAsync(() => server.Checks.CloseDataCheckAsync(closing).ResponseAsync));
    }

    [Fact]
    public async Task Refusals_say_what_is_wrong()
    {
        Assert.Equal("CHECK_NOT_FOUND", await CloseAsync("x", "lead", "?"));
        Assert.Equal("CHECK_NOT_FOUND", await CloseAsync("99999", "lead", "?"));
        Assert.Equal("FIELD_REQUIRED", await CloseAsync("1", "", "?"));
        Assert.Equal("FIELD_REQUIRED", await CloseAsync("1", "lead", ""));
        Assert.Equal("FIELD_REQUIRED", await MergeAsync(null, Twin));
        Assert.Equal("FIELD_NOT_ALLOWED", await MergeAsync(Card, new FindingName { Source = Card.Source, SourceRecordId = "other" }));
        Assert.Equal("FINDING_NOT_FOUND", await MergeAsync(Card, new FindingName { Source = Tablet, SourceRecordId = "none" }));
        Assert.Equal("FINDINGS_NOT_ALIKE", await MergeAsync(new FindingName { Source = Card.Source, SourceRecordId = "other" }, Twin));
        Assert.Equal("FINDING_NOT_MERGED", await ReasonAsync(() => server.Checks.UnmergeFindingsAsync(
            new UnmergeFindingsRequest { Merged = Twin, DecidedBy = "lead", Note = "?" }).ResponseAsync));
        await server.Checks.MergeFindingsAsync(new MergeFindingsRequest { Kept = Card, Merged = Twin, DecidedBy = "lead", Note = "one" });
        Assert.Equal("FINDING_IS_MERGED", await MergeAsync(Twin, Card));
        Assert.Equal("ENUM_UNKNOWN", await ListReasonAsync(new ListDataChecksRequest { Kind = (DataCheckKind)99 }));
        Assert.Equal("ENUM_UNKNOWN", await ListReasonAsync(new ListDataChecksRequest { State = (DataCheckState)99 }));
        Assert.Equal("PATTERN_MISMATCH", await ListReasonAsync(new ListDataChecksRequest { Registration = "ZZ\0" }));
        Assert.Equal("PAGE_TOKEN_INVALID", await ListReasonAsync(new ListDataChecksRequest { PageToken = "not a token!" }));

        Task<string> CloseAsync(string id, string by, string note) => ReasonAsync(() => server.Checks.CloseDataCheckAsync(
            new CloseDataCheckRequest { CheckId = id, ClosedBy = by, Note = note }).ResponseAsync);
        Task<string> MergeAsync(FindingName? kept, FindingName merged) => ReasonAsync(() => server.Checks.MergeFindingsAsync(
            new MergeFindingsRequest { Kept = kept, Merged = merged, DecidedBy = "lead", Note = "?" }).ResponseAsync);
        Task<string> ListReasonAsync(ListDataChecksRequest request) => ReasonAsync(() => server.Checks.ListDataChecksAsync(request).ResponseAsync);
    }

    [Fact]
    public async Task The_same_calls_are_there_as_JSON()
    {
        using var list = await server.Http.GetAsync("/v1/dataChecks?state=DATA_CHECK_STATE_OPEN&kind=DATA_CHECK_KIND_POSSIBLE_DUPLICATE");
        var check = (await list.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("checks")[0];
        using var closed = await server.Http.PostAsJsonAsync($"/v1/dataChecks/{check.GetProperty("checkId").GetString()}:close", new { closedBy = "lead", note = "two cracks" });
        Assert.Equal("DATA_CHECK_STATE_CLOSED", (await closed.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("check").GetProperty("state").GetString());
        object merge = new
        {
            kept = new { source = ShopCards.Source, sourceRecordId = "card" },
            merged = new { source = Tablet, sourceRecordId = "twin" },
            decidedBy = "lead",
            note = "one"
        };
        using var merged = await server.Http.PostAsJsonAsync("/v1/findings:merge", merge);
        Assert.True((await merged.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("merge").GetProperty("isMerged").GetBoolean());
        using var merges = await server.Http.GetAsync("/v1/findingMerges");
        Assert.Equal(1, (await merges.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("merges").GetArrayLength());
    }

    [Fact]
    public void Kinds_and_states_are_those_of_the_records_and_the_store()
    {
        Assert.Equal(
            Enum.GetValues<DataProblemKind>().Select(k => ((int)k, k.ToString())),
            Enum.GetValues<DataCheckKind>().Where(k => k != DataCheckKind.Unspecified).Select(k => ((int)k, k.ToString())));
        Assert.Equal(
            Enum.GetValues<FleetTrend.Store.DataProblems.DataProblemState>().Select(s => ((int)s, s.ToString())),
            Enum.GetValues<DataCheckState>().Where(s => s != DataCheckState.Unspecified).Select(s => ((int)s, s.ToString())));
    }

    private async Task<IReadOnlyList<DataCheck>> ListAsync(DataCheckKind kind, DataCheckState state = DataCheckState.Unspecified) =>
        (await server.Checks.ListDataChecksAsync(new ListDataChecksRequest { Kind = kind, State = state })).Checks;

    /// <summary>Records behind the event that the card tells.</summary>
    private async Task<IEnumerable<string>> EventOfCardAsync()
    {
        var rows = (await server.Trends.ListEvidenceAsync(new ListEvidenceRequest { Registration = "ZZ-A01" })).Rows;
        var found = rows.Single(r => r.Event is not null && r.RecordKeys.Any(k => k.SourceRecordId == "card"));
        return found.RecordKeys.Select(k => k.SourceRecordId).Order(StringComparer.Ordinal);
    }

    private async Task RefreshAsync() => await Refresh().RunAsync(CancellationToken.None);

    private TrendRefresh Refresh() => ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services);

    private Task WriteReportAsync(DateOnly start) => ActivatorUtilities.CreateInstance<ReportWriter>(server.Services, Refresh())
        .WriteAsync(new ReportPeriod(start, start.AddDays(6)), CancellationToken.None);

    private static async Task<string> ReasonAsync(Func<Task> call) =>
        (await Assert.ThrowsAsync<RpcException>(call)).GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason;
}

using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.IntegrationTests.Pages;
using FleetTrend.IntegrationTests.Trends;
using FleetTrend.Reports.Tests;
using FleetTrend.Store.People;
using Google.Rpc;
using Grpc.Core;

namespace FleetTrend.IntegrationTests.Flags;

/// <summary>The life of a flag over gRPC, JSON and the pages: the same steps, the same refusals, and nobody's answer is lost.</summary>
[Collection(SharedPostgres.Name)]
public sealed class FlagLifeCallTests(PostgresFixture postgres) : IAsyncLifetime
{
    private ApiServer server = null!;
    private string id = "";

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        var snapshot = InventedFleet.Snapshot();
        await server.Services.PublishAsync(snapshot);
        id = $"{(await server.Services.RaiseAsync(snapshot))[0].FlagId}";
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task A_flag_is_assigned_acknowledged_acted_on_closed_and_reopened_and_its_history_is_whole()
    {
        var day = ShopCards.ToWire(DateOnly.FromDateTime(System.DateTime.UtcNow));
        var assigned = (await server.Flags.AssignFlagAsync(new AssignFlagRequest { FlagId = id, Assignee = "shop", AssignedBy = "director", Etag = "1" })).Flag;
        Assert.Equal(("2", "shop", FlagState.Open, FlagTier.Flag), (assigned.Etag, assigned.Assignee, assigned.State, assigned.Tier));
        await server.Flags.AcknowledgeFlagAsync(new AcknowledgeFlagRequest { FlagId = id, AcknowledgedBy = "lead", Comment = "hanger ordered", Etag = "2" });
        var acting = new ActOnFlagRequest { FlagId = id, ActedBy = "lead", ActionDate = day, TimeInServiceHours = 812.4, Comment = "hanger moved", Etag = "3" };
        var acted = (await server.Flags.ActOnFlagAsync(acting)).Flag;
        Assert.Equal((FlagState.ActedOn, day, "4"), (acted.State, acted.ActionDate, acted.Etag));
        Assert.Equal(acted, (await server.Flags.ActOnFlagAsync(acting)).Flag); // sent again after a lost answer
        await server.Flags.CloseFlagAsync(new CloseFlagRequest { FlagId = id, ClosedBy = "director", Comment = "done", Etag = "4" });
        var reopened = (await server.Flags.ReopenFlagAsync(new ReopenFlagRequest { FlagId = id, ReopenedBy = "director", Comment = "cracked again", Etag = "5" })).Flag;
        Assert.Equal((FlagState.Reopened, "6", "shop"), (reopened.State, reopened.Etag, reopened.Assignee));

        var steps = (await server.Flags.ListFlagStepsAsync(new ListFlagStepsRequest { FlagId = id })).Steps;
        Assert.Equal(
            [
                (FlagState.Open, "", ""), (FlagState.Open, "director", ""), (FlagState.Acknowledged, "lead", "hanger ordered"),
                (FlagState.ActedOn, "lead", "hanger moved"), (FlagState.Closed, "director", "done"), (FlagState.Reopened, "director", "cracked again"),
            ],
            steps.Select(step => (step.State, step.By, step.Comment)));
        Assert.Equal((day, 812.4), (steps[3].ActionDate, steps[3].TimeInServiceHours));
        Assert.Equal(["", "shop", "shop", "shop", "shop", "shop"], steps.Select(step => step.Assignee));
        var times = steps.Select(step => step.StepTime.ToDateTimeOffset()).ToList();
        Assert.True(times.Zip(times.Skip(1)).All(pair => pair.First < pair.Second));
    }

    [Fact]
    public async Task An_answer_to_what_somebody_else_has_answered_meanwhile_is_refused_over_gRPC_and_JSON()
    {
        await server.Flags.AcknowledgeFlagAsync(new AcknowledgeFlagRequest { FlagId = id, AcknowledgedBy = "lead", Comment = "mine", Etag = "1" });

        var late = await Assert.ThrowsAsync<RpcException>(async () => await server.Flags.CloseFlagAsync(
            new CloseFlagRequest { FlagId = id, ClosedBy = "director", Comment = "done", Etag = "1" }));
        Assert.Equal((StatusCode.Aborted, "FLAG_CHANGED"), (late.StatusCode, late.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason));
        Assert.Equal(
            "etag: must be that of the flag as it stands, 2: lead took a step meanwhile, and it is FLAG_STATE_ACKNOWLEDGED now; got \"1\"", late.Status.Detail);

        using var answer = await server.Http.PostAsJsonAsync($"v1/flags/{id}:close", new { closedBy = "director", comment = "done", etag = "1" });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("lead took a step meanwhile", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var taken = await server.Http.PostAsJsonAsync($"v1/flags/{id}:actOn", new
        {
            actedBy = "director",
            comment = "hanger moved",
            etag = "2",
            actionDate = new { year = 2026, month = 2, day = 3 },
        });
        Assert.Equal("FLAG_STATE_ACTED_ON", (string?)(await taken.Content.ReadFromJsonAsync<JsonNode>())!["flag"]!["state"]);
    }

    [Fact]
    public async Task A_step_that_does_not_lead_on_is_refused_by_name()
    {
        async Task<string?> RefusedAsync<T>(AsyncUnaryCall<T> call) =>
            (await Assert.ThrowsAsync<RpcException>(async () => await call)).GetRpcStatus()?.GetDetail<ErrorInfo>()?.Reason;
        var flags = server.Flags;
        Assert.Equal("FLAG_STEP_NOT_NOW", await RefusedAsync(flags.ReopenFlagAsync(new ReopenFlagRequest { FlagId = id, ReopenedBy = "lead", Comment = "why" })));
        Assert.Equal("PATTERN_MISMATCH", await RefusedAsync(flags.AcknowledgeFlagAsync(new AcknowledgeFlagRequest { FlagId = id, AcknowledgedBy = "lead", Etag = "x" })));
        var tomorrow = ShopCards.ToWire(DateOnly.FromDateTime(System.DateTime.UtcNow).AddDays(2));
        Assert.Equal("DATE_OUT_OF_RANGE", await RefusedAsync(flags.ActOnFlagAsync(
            new ActOnFlagRequest { FlagId = id, ActedBy = "lead", Comment = "planned", ActionDate = tomorrow })));
        await flags.ActOnFlagAsync(new ActOnFlagRequest { FlagId = id, ActedBy = "lead", Comment = "done", ActionDate = new() { Year = 2026, Month = 2, Day = 3 } });
        Assert.Equal("FLAG_STEP_NOT_NOW", await RefusedAsync(flags.AcknowledgeFlagAsync(new AcknowledgeFlagRequest { FlagId = id, AcknowledgedBy = "lead" })));
        await flags.CloseFlagAsync(new CloseFlagRequest { FlagId = id, ClosedBy = "lead", Comment = "done" });
        Assert.Equal("FLAG_IS_CLOSED", await RefusedAsync(flags.AssignFlagAsync(new AssignFlagRequest { FlagId = id, Assignee = "shop", AssignedBy = "lead" })));
        Assert.Equal("FLAG_NOT_FOUND", await RefusedAsync(flags.ListFlagStepsAsync(new ListFlagStepsRequest { FlagId = "99999" })));
        Assert.Equal("FLAG_NOT_FOUND", await RefusedAsync(flags.ListFlagStepsAsync(new ListFlagStepsRequest { FlagId = "x" })));
    }

    [Fact]
    public async Task The_second_of_two_that_answer_the_same_page_is_told()
    {
        using var director = await Browser.SignedInAsync(server, "director <i>", PersonRole.Director);
        var path = $"/flags/{id}";
        var seen = await director.PageAsync(path);
        var etag = seen.QuerySelector($"{Form("Close")} input[name=etag]")!.GetAttribute("value")!;
        var mark = await director.MarkAsync(path);
        await server.Flags.AcknowledgeFlagAsync(new AcknowledgeFlagRequest { FlagId = id, AcknowledgedBy = "lead", Comment = "mine" });

        using var late = await director.PostAsync(
            $"{path}?handler=Close", new() { ["comment"] = "my words", ["etag"] = etag }, mark);

        Assert.Equal(HttpStatusCode.Conflict, late.StatusCode);
        var page = await Browser.ReadAsync(late);
        Assert.Contains("lead took a step meanwhile", page.QuerySelector("[role=alert]")!.TextContent);
        Assert.Equal("my words", page.QuerySelector("#close-comment")!.TextContent);
        Assert.Equal("2", page.QuerySelector($"{Form("Close")} input[name=etag]")!.GetAttribute("value")); // who reads what came may send it again
        Assert.Equal("FLAG_STATE_ACKNOWLEDGED", ContractState((await server.Flags.ListFlagsAsync(new ListFlagsRequest())).Flags.Single(f => f.FlagId == id)));
    }

    [Fact]
    public async Task The_forms_take_every_step_and_the_page_tells_the_life()
    {
        using var director = await Browser.SignedInAsync(server, "director <i>", PersonRole.Director);
        var path = $"/flags/{id}";
        async Task SentAsync(string handler, Dictionary<string, string> typed)
        {
            using var taken = await director.SendAsync(path, Form(handler), typed);
            Assert.Equal((HttpStatusCode.Redirect, $"{path}?done={handler.ToLowerInvariant()}"), (taken.StatusCode, taken.Headers.Location!.OriginalString));
        }

        Assert.Null((await director.PageAsync(path)).QuerySelector(Form("Reopen")));
        await SentAsync("Assign", new() { ["assignee"] = "shop" });
        await SentAsync("Act", new() { ["action_date"] = "2026-02-03", ["time_in_service_hours"] = "812.4", ["comment"] = "hanger moved" });
        Assert.Null((await director.PageAsync(path)).QuerySelector(Form("Acknowledge")));
        await SentAsync("Close", new() { ["comment"] = "done" });
        await SentAsync("Reopen", new() { ["comment"] = "cracked again" });
        using (var refused = await director.SendAsync(path, Form("Act"), new() { ["action_date"] = "3 Feb", ["comment"] = "x" }))
        {
            Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
            Assert.Contains("must be a date such as 2026-02-03; got \"3 Feb\"", (await Browser.ReadAsync(refused)).QuerySelector("#act-action_date-error")!.TextContent);
        }

        var lines = (await director.PageAsync(path)).QuerySelectorAll(".steps li").Select(line => line.TextContent).ToList();
        Assert.Equal(5, lines.Count);
        Assert.Contains("flagged by the numbers", lines[0]);
        Assert.Contains("to be seen to by \u201cshop\u201d", lines[1]);
        Assert.Contains("acted on by \u201cdirector <i>\u201d, done 3 Feb 2026 at 812 h", lines[2]);
        Assert.Contains("closed by \u201cdirector <i>\u201d", lines[3]);
        Assert.Contains("reopened by \u201cdirector <i>\u201d, to be seen to by \u201cshop\u201d: \u201ccracked again\u201d", lines[4]);
    }

    private static string Form(string handler) => $"form[action$='handler={handler}']";

    private static string ContractState(Flag flag) => FleetTrend.Intake.ContractWords.Write(flag.State);
}

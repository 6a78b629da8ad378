using System.Net;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.IntegrationTests.Trends;
using FleetTrend.Reports.Tests;
using FleetTrend.Store.Flags;
using FleetTrend.Store.People;
using Microsoft.Extensions.DependencyInjection;
using FlagState = FleetTrend.Records.Flags.FlagState;

namespace FleetTrend.IntegrationTests.Pages;

/// <summary>Every form of the pages against the call that it stands for: who gets it, what it does, what it refuses.</summary>
[Collection(SharedPostgres.Name)]
public sealed class FormTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Tablet = "tablet";

    private ApiServer server = null!;
    private Browser director = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        director = await Browser.SignedInAsync(server, "director <i>", PersonRole.Director);
    }

    public async Task DisposeAsync()
    {
        director.Dispose();
        await server.DisposeAsync();
    }

    [Fact]
    public async Task A_flag_is_acknowledged_and_closed_and_the_API_says_the_same()
    {
        var id = await RaiseAsync();
        Assert.NotNull((await director.PageAsync("/flags")).QuerySelector($"a[href='/flags/{id}']"));
        using (var taken = await director.SendAsync($"/flags/{id}", Form("Acknowledge"), new() { ["comment"] = "on the\r\nnext 100-hour\r\n" }))
            Assert.Equal((HttpStatusCode.Redirect, $"/flags/{id}?done=acknowledge"), (taken.StatusCode, taken.Headers.Location!.OriginalString));
        var flag = await FlagAsync(id);
        Assert.Equal((FlagState.Acknowledged, "director <i>", "on the\nnext 100-hour"), (flag.State, flag.AnsweredBy, flag.Answer));
        var page = await director.PageAsync($"/flags/{id}?done=acknowledge");
        Assert.Contains("Recorded: Acknowledged by \u201cdirector <i>\u201d", page.QuerySelector("[role=status]")!.TextContent);
        Assert.NotNull(page.QuerySelector(".ft-card"));

        using (var taken = await director.SendAsync($"/flags/{id}", Form("Close"), new() { ["comment"] = "hanger moved" }))
            Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
        Assert.Equal(FlagState.Closed, (await FlagAsync(id)).State);
        Assert.Equal([$"/flags/{id}?handler=Reopen"], (await director.PageAsync($"/flags/{id}")).QuerySelectorAll("form[action^='/flags']").Select(form => form.GetAttribute("action")));
        Assert.NotNull((await director.PageAsync("/flags?state=closed")).QuerySelector($"a[href='/flags/{id}']"));
    }

    [Fact]
    public async Task A_broken_rule_stands_beside_its_field_and_what_was_typed_stays()
    {
        var id = await RaiseAsync();
        using var refused = await director.SendAsync($"/flags/{id}", Form("Act"), new() { ["action_date"] = "3 <Feb>", ["comment"] = "<look> at \"it\"" });
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        var page = await Browser.ReadAsync(refused);
        var field = page.QuerySelector("#act-action_date")!;
        Assert.Equal(("3 <Feb>", "true"), (field.GetAttribute("value"), field.GetAttribute("aria-invalid")));
        Assert.Contains("act-action_date-error", field.GetAttribute("aria-describedby"));
        Assert.Contains("must be a date such as 2026-02-03; got \"3 <Feb>\"", page.QuerySelector("#act-action_date-error")!.TextContent);
        Assert.Equal("<look> at \"it\"", page.QuerySelector("#act-comment")!.TextContent);
        Assert.Equal("", page.QuerySelector("#close-comment")!.TextContent);
        Assert.NotNull(page.QuerySelector("[role=alert] a[href='#act-action_date']"));
        Assert.Equal(FlagState.Open, (await FlagAsync(id)).State);
    }

    [Fact] // Somebody else closed it while the form was open.
    public async Task A_flag_closed_meanwhile_and_one_that_is_not_there_are_refused()
    {
        var id = await RaiseAsync();
        var mark = await director.MarkAsync($"/flags/{id}");
        await server.Flags.CloseFlagAsync(new CloseFlagRequest { FlagId = $"{id}", ClosedBy = "somebody", Comment = "done" });
        using var stale = await director.PostAsync($"/flags/{id}?handler=Acknowledge", new() { ["comment"] = "my words" }, mark);
        Assert.Equal(HttpStatusCode.BadRequest, stale.StatusCode);
        var page = await Browser.ReadAsync(stale);
        Assert.Contains("must be a flag that is not closed", page.QuerySelector("[role=alert]")!.TextContent);
        Assert.Equal("my words", page.QuerySelector("#acknowledge-comment")!.TextContent);
        Assert.Equal("somebody", (await FlagAsync(id)).AnsweredBy);

        using var unknown = await director.PostAsync("/flags/99999?handler=Close", new() { ["comment"] = "?" }, mark);
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
        Assert.Contains("No such flag", (await Browser.ReadAsync(unknown)).QuerySelector("h1")!.TextContent);
        using var none = await director.GetAsync("/flags/99999");
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public async Task A_duplicate_is_merged_taken_back_and_kept_apart()
    {
        await TwoSourcesAsync();
        var offer = await OfferAsync();
        var path = $"/data-problems/{offer.CheckId}";
        Assert.NotNull((await director.PageAsync("/data-problems")).QuerySelector($"a[href='{path}']"));
        using (var taken = await director.SendAsync(path, Form("Merge"), new() { ["kept"] = "shop-cards card", ["note"] = "one crack on two cards" }))
            Assert.Equal((HttpStatusCode.Redirect, path + "?done=merge"), (taken.StatusCode, taken.Headers.Location!.OriginalString));
        var merge = Assert.Single((await server.Checks.ListFindingMergesAsync(new ListFindingMergesRequest())).Merges);
        Assert.Equal(("card", "twin", "director <i>", true), (merge.Kept.SourceRecordId, merge.Merged.SourceRecordId, merge.DecidedBy, merge.IsMerged));
        var merged = await director.PageAsync(path + "?done=merge");
        Assert.Contains("one event, decided by \u201cdirector <i>\u201d", merged.QuerySelector("[role=status]")!.TextContent);
        Assert.Null(merged.QuerySelector("form"));
        Assert.NotNull((await director.PageAsync("/merges")).QuerySelector($"a[href='/merges/{merge.MergeId}']"));

        var undo = merged.QuerySelector("main a[href^='/merges/']")!.GetAttribute("href")!;
        using (var empty = await director.SendAsync(undo, Form("Unmerge"), new() { ["note"] = "" }))
        {
            Assert.Equal(HttpStatusCode.BadRequest, empty.StatusCode);
            var page = await Browser.ReadAsync(empty);
            Assert.Contains("must say why; got nothing", page.QuerySelector("#unmerge-note-error")!.TextContent);
        }

        using (var back = await director.SendAsync(undo, Form("Unmerge"), new() { ["note"] = "two, by photo" }))
            Assert.Contains("taken back by \u201cdirector <i>\u201d", (await director.PageAsync(back.Headers.Location!.OriginalString)).QuerySelector("[role=status]")!.TextContent);
        Assert.Contains("does not hold any more", (await director.PageAsync(undo)).QuerySelector("main")!.TextContent);

        await RefreshAsync(); // offered again, as a new check
        var again = await OfferAsync();
        Assert.NotEqual(offer.CheckId, again.CheckId);
        using (var apart = await director.SendAsync($"/data-problems/{again.CheckId}", Form("Close"), new() { ["note"] = "two cracks" }))
            Assert.Equal(HttpStatusCode.Redirect, apart.StatusCode);
        var closed = Assert.Single((await server.Checks.ListDataChecksAsync(new ListDataChecksRequest { State = DataCheckState.Closed })).Checks);
        Assert.Equal((again.CheckId, "director <i>", "two cracks"), (closed.CheckId, closed.ClosedBy, closed.CloseNote));
    }

    [Fact]
    public async Task Merging_without_saying_which_stands_is_refused_beside_the_choice_and_a_stale_offer_too()
    {
        await TwoSourcesAsync();
        var path = $"/data-problems/{(await OfferAsync()).CheckId}";
        var mark = await director.MarkAsync(path);
        using (var refused = await director.PostAsync(path + "?handler=Merge", new() { ["note"] = "kept words" }, mark))
        {
            Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
            var page = await Browser.ReadAsync(refused);
            Assert.Contains("choose one of the two", page.QuerySelector("#merge-kept-error")!.TextContent);
            Assert.Equal("kept words", page.QuerySelector("#merge-note")!.TextContent);
        }

        await server.Intake.PushRecordAsync(
            new PushRecordRequest { Record = new Record { Key = ShopCards.Key("card", 2), Retraction = new Retraction { Reason = "a stain" } } });
        using (var gone = await director.SendAsync(path, Form("Merge"), new() { ["kept"] = "shop-cards card", ["note"] = "one" }))
        {
            Assert.Equal(HttpStatusCode.NotFound, gone.StatusCode);
            Assert.Contains("was not taken back", (await Browser.ReadAsync(gone)).QuerySelector("#merge-kept-error")!.TextContent);
        }

        using var unknown = await director.PostAsync("/data-problems/99999?handler=Merge", new() { ["kept"] = "x", ["note"] = "one" }, mark);
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
        using var unknownMerge = await director.PostAsync("/merges/99999?handler=Unmerge", new() { ["note"] = "two" }, mark);
        Assert.Equal(HttpStatusCode.NotFound, unknownMerge.StatusCode);
        Assert.Equal(0, await server.CountAsync("finding_merges"));
    }

    [Fact]
    public async Task A_data_problem_is_closed_once()
    {
        await TwoSourcesAsync();
        var path = $"/data-problems/{(await OfferAsync()).CheckId}";
        var mark = await director.MarkAsync(path);
        using (var taken = await director.SendAsync(path, Form("Close"), new() { ["note"] = "two" }))
            Assert.Contains("closed by \u201cdirector <i>\u201d", (await director.PageAsync(taken.Headers.Location!.OriginalString)).QuerySelector("[role=status]")!.TextContent);
        using (var twice = await director.PostAsync(path + "?handler=Close", new() { ["note"] = "two" }, mark))
            Assert.Equal(HttpStatusCode.Redirect, twice.StatusCode); // the same words again change nothing
        using var late = await director.PostAsync(path + "?handler=Close", new() { ["note"] = "mine" }, mark);
        Assert.Equal(HttpStatusCode.BadRequest, late.StatusCode);
        var page = await Browser.ReadAsync(late);
        Assert.Contains("must be a data check that is open", page.QuerySelector("[role=alert]")!.TextContent);
        Assert.Equal("mine", page.QuerySelector("#close-note")!.TextContent);
    }

    [Fact]
    public async Task Held_records_say_what_they_wait_for_and_a_code_is_given_its_meaning()
    {
        await ShopCards.RegisterAsync(server);
        var coded = ShopCards.Finding("coded");
        (coded.Finding.Location, coded.Finding.LocationCode) = ("", "EX-3 <F>");
        await server.Intake.PushRecordsAsync(new PushRecordsRequest
        {
            HoldUnregistered = true,
            Records = { ShopCards.Aircraft("ZZ-A01"), coded, ShopCards.Reading("h1", "ZZ-Q98", 4, 10), ShopCards.Reading("h2", "ZZ-Q98", 5, 11) },
        });
        var page = await director.PageAsync("/held-records");
        Assert.Contains("Records held3", string.Concat(page.QuerySelectorAll(".status div").Select(d => string.Concat(d.Children.Select(c => c.TextContent)))));
        Assert.Equal(["ZZ-Q98", "2"], page.QuerySelectorAll("#marks + div tbody tr > *").Take(2).Select(c => c.TextContent));
        Assert.Equal(["\u201cEX-3 <F>\u201d", "shop-cards", "a location", "1"], page.QuerySelectorAll("#codes + div tbody tr > *").Take(4).Select(c => c.TextContent));
        var records = page.QuerySelectorAll("#records + div tbody tr").Select(r => r.TextContent).ToList();
        Assert.Equal(3, records.Count);
        Assert.Single(records, r => r.Contains("The code has no meaning yet.", StringComparison.Ordinal));
        Assert.Equal(2, records.Count(r => r.Contains("ZZ-Q98. The aircraft is not registered.", StringComparison.Ordinal)));

        var set = page.QuerySelector("#codes + div a")!.GetAttribute("href")!;
        using (var empty = await director.SendAsync(set, "main form", new() { ["code.location"] = "" }))
        {
            Assert.Equal(HttpStatusCode.BadRequest, empty.StatusCode);
            Assert.NotNull((await Browser.ReadAsync(empty)).QuerySelector("#set-code-location-error"));
        }

        using (var taken = await director.SendAsync(set, "main form", new() { ["code.location"] = ShopCards.Weld }))
        {
            Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
            Assert.Contains(ShopCards.Weld, (await director.PageAsync(taken.Headers.Location!.OriginalString)).QuerySelector("[role=status]")!.TextContent);
        }

        await Eventually.TrueAsync(async () => await server.CountAsync("held_records where release_time is not null") == 1);
        using var nonsense = await director.GetAsync("/codes/set?source=shop-cards&kind=weather&code=x");
        Assert.Equal(HttpStatusCode.NotFound, nonsense.StatusCode);
    }

    [Fact]
    public async Task Signed_out_the_browser_sees_no_page_and_every_page_has_its_cautions_and_its_moment()
    {
        var id = await RaiseAsync();
        await TwoSourcesAsync();
        foreach (var path in new[] { "/", "/flags", $"/flags/{id}", "/data-problems", $"/data-problems/{(await OfferAsync()).CheckId}", "/held-records", "/merges", "/parameters" })
        {
            var page = await director.PageAsync(path);
            Assert.Contains(FleetTrend.Reports.Weekly.Cautions.Brief, page.QuerySelector("footer")!.TextContent);
            Assert.Contains("as of", page.QuerySelector("main")!.TextContent, StringComparison.OrdinalIgnoreCase);
            Assert.Single(page.QuerySelectorAll("h1"));
            Assert.Empty(page.QuerySelectorAll("script"));
            Assert.All(page.QuerySelectorAll("input:not([type=hidden]), textarea, select"), field => Assert.NotNull(page.QuerySelector($"label[for='{field.Id}']")));
            var identifiers = page.QuerySelectorAll("[id]").Select(e => e.Id!).ToList();
            Assert.Equal(identifiers.Distinct(StringComparer.Ordinal), identifiers);
        }

        using (var signedOut = await director.SendAsync("/sign-in", "form[action*=Out]", []))
            Assert.Equal("/sign-in", signedOut.Headers.Location!.OriginalString);
        using var led = await director.GetAsync("/flags");
        Assert.Equal(HttpStatusCode.Redirect, led.StatusCode);
    }

    private static string Form(string handler) => $"form[action$='handler={handler}']";

    private async Task<long> RaiseAsync()
    {
        var snapshot = InventedFleet.Snapshot();
        await server.Services.PublishAsync(snapshot);
        return (await server.Services.RaiseAsync(snapshot))[0].FlagId;
    }

    private async Task<StoredFlag> FlagAsync(long id) => (await server.Services.GetRequiredService<FlagStore>().GetAsync(id, default))!;

    private async Task TwoSourcesAsync()
    {
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordsAsync(new PushRecordsRequest { Records = { ShopCards.Aircraft("ZZ-A01"), ShopCards.Finding("card") } });
        var twin = ShopCards.Finding("twin", day: 12);
        twin.Key.Source = Tablet;
        await (await server.IntakeOfAsync(Tablet)).PushRecordAsync(new PushRecordRequest { Record = twin });
        await RefreshAsync();
    }

    private async Task<DataCheck> OfferAsync() => (await server.Checks.ListDataChecksAsync(new ListDataChecksRequest
    {
        Kind = DataCheckKind.PossibleDuplicate,
        State = DataCheckState.Open,
    })).Checks.Single();

    private Task<FleetTrend.Trends.TrendSnapshot> RefreshAsync() => server.Services.RefreshAsync();
}

using System.Net;
using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Results.Refreshes;
using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>Drafts for an authority, over the contract, on their page and as a file.</summary>
[Collection(SharedPostgres.Name)]
public sealed class AuthorityDraftTests(PostgresFixture postgres)
{
    // The weld of ZZ-A00 cracked at 812.4 h on day 10, a crack of 4.5 mm, and nothing was done; it is corroded, too. The finding has a note that names a
    // person.
    [Fact]
    public async Task A_finding_that_may_have_to_be_reported_has_a_draft_and_another_says_why_not()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        var (crack, rust) = (ShopCards.Finding("crack 1/2", "ZZ-A00"), ShopCards.Finding("rust", "ZZ-A00"));
        crack.Finding.Note = "Seen by Somebody Invented";
        rust.Finding.Condition = Condition.Corrosion;
        Record[] records = [ShopCards.Aircraft("ZZ-A00"), crack, rust, ShopCards.Reading("read", "ZZ-A00", 60, 850)];
        foreach (var record in records)
        {
            var pushed = await server.Intake.PushRecordAsync(new PushRecordRequest { Record = record });
            Assert.True(pushed.Outcome.State == RecordState.Accepted, $"{pushed}");
        }

        Assert.Contains("No refresh that knows this aircraft has run yet", await server.Http.GetStringAsync("/aircraft/zz-a00/draft"), StringComparison.Ordinal);
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var asked = new GetAuthorityDraftRequest { Registration = "zz-a00", Source = ShopCards.Source, SourceRecordId = "crack 1/2" };
        var answer = await server.Trends.GetAuthorityDraftAsync(asked);
        var draft = answer.Draft;
        Assert.Equal((ShopCards.Weld, Condition.Crack, true, ""), (draft.Location, draft.Condition, draft.IsOpen, draft.WhyNot));
        Assert.Equal(["14 CFR 121.703(a)(4), 135.415(a)(4)", "14 CFR 121.703(a)(5), 135.415(a)(5)", "14 CFR 145.221"], draft.Citations);
        Assert.StartsWith("DRAFT. It may have to be reported: you judge.\n", draft.Text, StringComparison.Ordinal);
        Assert.Contains("\nCondition: crack, 4.5 mm\n", draft.Text, StringComparison.Ordinal);
        Assert.Contains("\nTime in service when found: 812.4 h\n", draft.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Somebody", draft.Text, StringComparison.Ordinal);
        Assert.NotNull(answer.Freshness.AsOfTime);
        var open = (await server.Trends.ListOpenFindingsAsync(new ListOpenFindingsRequest())).OpenFindings;
        Assert.Equal(draft.Citations, open.Single(f => f.Condition == Condition.Crack).Citations);
        Assert.Empty(open.Single(f => f.Condition == Condition.Corrosion).Citations);

        // From the list of open findings to its page, and the same text as a file.
        var list = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/open"));
        var link = Assert.Single(list.QuerySelectorAll("main tbody a"), a => a.TextContent == "Draft").GetAttribute("href")!;
        var page = new HtmlParser().ParseDocument(await server.Http.GetStringAsync(link));
        Assert.Equal(draft.Text.TrimEnd('\n'), page.QuerySelector("pre")!.TextContent.TrimEnd('\n'));
        Assert.Contains("does not decide whether a finding has to be reported, and it sends nothing: you judge.", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Single(page.QuerySelectorAll("section[aria-labelledby=ft-candidates] li"));
        using var file = await server.Http.GetAsync(page.QuerySelector("a[download]")!.GetAttribute("href"));
        Assert.Equal(("text/plain", draft.Text), (file.Content.Headers.ContentType!.MediaType, await file.Content.ReadAsStringAsync()));
        var aircraft = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/aircraft/ZZ-A00"));
        Assert.Contains(aircraft.QuerySelectorAll("a"), a => a.GetAttribute("href") == "/aircraft/ZZ-A00/draft");
        Assert.Single(aircraft.QuerySelectorAll("a"), a => a.GetAttribute("href") == link);

        // Another kind of finding has none and says why.
        asked.SourceRecordId = "rust";
        var none = (await server.Trends.GetAuthorityDraftAsync(asked)).Draft;
        Assert.Equal(("", 0), (none.Text, none.Citations.Count));
        Assert.StartsWith("No draft: corrosion at exhaust/", none.WhyNot, StringComparison.Ordinal);
        Assert.Contains("No draft: corrosion", await server.Http.GetStringAsync($"/aircraft/ZZ-A00/draft?source={ShopCards.Source}&record=rust"), StringComparison.Ordinal);
        using var noFile = await server.Http.GetAsync($"/aircraft/ZZ-A00/draft.txt?source={ShopCards.Source}&record=rust");
        Assert.Equal(HttpStatusCode.NotFound, noFile.StatusCode);
    }

    [Fact]
    public async Task A_finding_that_is_none_is_refused()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-A00") });
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);
        await RefusedAsync(new(), StatusCode.InvalidArgument, "registration: must be given");
        await RefusedAsync(new() { Registration = "ZZ-A00" }, StatusCode.InvalidArgument, "source_record_id: must be given");
        await RefusedAsync(new() { Registration = "ZZ-A00", Source = ShopCards.Source, SourceRecordId = "x" }, StatusCode.NotFound, "source_record_id: must be a finding of the aircraft");
        using var page = await server.Http.GetAsync("/aircraft/ZZ-A00/draft?source=x&record=y");
        Assert.Equal(HttpStatusCode.NotFound, page.StatusCode);
        Assert.Contains("ZZ-A00 has no finding under that record.", await page.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var unknown = await server.Http.GetAsync("/aircraft/ZZ-A0O/draft");
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);

        async Task RefusedAsync(GetAuthorityDraftRequest request, StatusCode code, string start)
        {
            var refused = await Assert.ThrowsAsync<RpcException>(() => server.Trends.GetAuthorityDraftAsync(request).ResponseAsync);
            Assert.Equal((code, true), (refused.StatusCode, refused.Status.Detail.StartsWith(start, StringComparison.Ordinal)));
        }
    }
}

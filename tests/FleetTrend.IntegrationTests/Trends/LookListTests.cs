using System.Net;
using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Results.Refreshes;
using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>What to look at when an aircraft comes in next, over the contract and on its page.</summary>
[Collection(SharedPostgres.Name)]
public sealed class LookListTests(PostgresFixture postgres)
{
    // By hand: the weld of ZZ-A00 cracked at 812.4 h on day 10, and nothing was done; the aircraft reads 850 h on day 60, 37.6 h later. Nobody ever
    // looked at the
    // gasket; the layout names the weld before it.
    [Fact]
    public async Task The_list_has_every_location_in_the_order_of_the_layout_and_says_why_one_stands_out()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        var early = await Assert.ThrowsAsync<RpcException>(() => server.Trends.GetLookListAsync(new GetLookListRequest { Registration = "ZZ-A00" }).ResponseAsync);
        Assert.Equal(StatusCode.NotFound, early.StatusCode);
        Record[] records = [ShopCards.Aircraft("ZZ-A00"), ShopCards.Finding("crack", "ZZ-A00"), ShopCards.Reading("read", "ZZ-A00", 60, 850)];
        foreach (var record in records)
        {
            var pushed = await server.Intake.PushRecordAsync(new PushRecordRequest { Record = record });
            Assert.True(pushed.Outcome.State == RecordState.Accepted, $"{pushed}");
        }

        using (var before = await server.Http.GetAsync("/aircraft/zz-a00"))
            Assert.Contains("No refresh that knows this aircraft has run yet", await before.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var answer = await server.Trends.GetLookListAsync(new GetLookListRequest { Registration = "zz-a00" });
        Assert.Equal([ShopCards.Weld, ShopCards.Gasket], answer.LookList.Lines.Select(l => l.Location));
        var weld = answer.LookList.Lines[0];
        Assert.Equal([LookReason.Open], weld.Reasons);
        Assert.Equal("Crack open for 37.6 h", weld.ReasonsText);
        Assert.Equal((Condition.Crack, 4.5, true, ActionKind.Unspecified), (weld.Before[0].Condition, weld.Before[0].SizeMm, weld.Before[0].IsOpen,
            weld.Before[0].Action));
        Assert.Equal(["crack"], weld.Before[0].RecordKeys.Select(k => k.SourceRecordId));
        Assert.Equal([LookReason.NeverLookedAt], answer.LookList.Lines[1].Reasons);
        Assert.False(answer.LookList.Lines[1].HasHoursSinceLook);
        Assert.Equal((850.0, 0.95), (answer.LookList.LatestHours, answer.LookList.Confidence));
        Assert.NotNull(answer.Freshness.AsOfTime);
        Assert.Contains("\"reasonsText\":\"Crack open for 37.6 h\"", (await server.Http.GetStringAsync("/v1/trends/lookLists/ZZ-A00")).Replace(" \"", "\"", StringComparison.Ordinal), StringComparison.Ordinal);

        var page = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/aircraft/zz-a00"));
        Assert.Equal("ZZ-A00", page.QuerySelector("h1")!.TextContent);
        Assert.Contains("Look first at cyl 1 flange weld (crack open for 37.6 h); cyl 1 gasket (never looked at).", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(
            ["Cyl 1 flange weld", "Cyl 1 gasket"],
            page.QuerySelectorAll("section[aria-labelledby=ft-look-list] tbody tr").Select(r => r.Children[0].TextContent));
        var sheet = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/aircraft/ZZ-A00/look-list"));
        Assert.Equal(2, sheet.QuerySelectorAll("main tbody tr").Length);
        Assert.All(page.QuerySelectorAll("nav a[href^='#']"), link => Assert.NotNull(page.QuerySelector(link.GetAttribute("href")!)));
    }

    [Fact]
    public async Task A_mark_that_nobody_has_is_refused_and_the_nearest_is_named()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-A00") });
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);
        var refused = await Assert.ThrowsAsync<RpcException>(() => server.Trends.GetLookListAsync(new GetLookListRequest()).ResponseAsync);
        Assert.Equal((StatusCode.InvalidArgument, true), (refused.StatusCode, refused.Status.Detail.StartsWith("registration: must be given", StringComparison.Ordinal)));
        using var unknown = await server.Http.GetAsync("/aircraft/ZZ-A0O");
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
        Assert.Contains("Did you mean ZZ-A00?", await unknown.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        var list = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/aircraft?search=zz-a"));
        Assert.Equal("/aircraft/ZZ-A00", Assert.Single(list.QuerySelectorAll("main tbody tr")).QuerySelector("a")!.GetAttribute("href"));
        Assert.Empty(new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/aircraft?base=South")).QuerySelectorAll("main tbody tr"));
    }
}

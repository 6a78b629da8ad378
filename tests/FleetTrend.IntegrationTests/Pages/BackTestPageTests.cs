using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.IntegrationTests.Trends;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Observing;
using FleetTrend.Results.Refreshes;
using FleetTrend.Statistics.Monitoring;
using FleetTrend.Trends;
using FleetTrend.Trends.BackTests;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Pages;

/// <summary>The page of the back-test says what the replay of the published moment says, in tables, a plot and words.</summary>
[Collection(SharedPostgres.Name)]
public sealed class BackTestPageTests(PostgresFixture postgres) : IAsyncLifetime
{
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task Before_the_first_refresh_it_says_that_there_is_nothing_to_replay()
    {
        var page = await PageAsync("/backtest");
        Assert.Contains("nothing to replay", page.QuerySelector("[role=status]")!.TextContent);
        Assert.Empty(page.QuerySelectorAll("table, img"));
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync("/backtest/plot.png?type-group=welded")).StatusCode);
        Assert.NotNull((await PageAsync("/flags")).QuerySelector("header a[href='/backtest']"));
    }

    [Fact]
    public async Task Methods_calls_and_plot_are_those_of_the_published_moment()
    {
        var bad = await PlantedChange.PushAsync(server);
        var asOf = await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);
        var page = await PageAsync("/backtest");

        var reader = server.Services.GetRequiredService<TypeGroupReader>();
        var inputs = await reader.ReadAsync(asOf, PlantedChange.TypeGroup, new TrendParameters(), keep: false, default);
        var test = BackTestReplay.Run(inputs);
        var methods = page.QuerySelector("#methods ~ div tbody")!.QuerySelectorAll("tr").Select(r => r.Children.Select(c => c.TextContent).ToArray()).ToList();
        Assert.Equal(test.Methods.Select(m => (m.Title, $"{m.AircraftCalls}")), methods.Select(m => (m[0], m[1])));
        Assert.Equal(2 + AlertPractice.All.Count, methods.Count);
        var calls = page.QuerySelectorAll("#calls ~ div tbody tr").Select(r => r.Children.Select(c => c.TextContent).ToArray()).ToList();
        Assert.Equal(test.Calls.Select(c => (BackTestWords.Who(c), c.Method)), calls.Select(c => (c[1], c[3])));
        Assert.Contains(calls, c => c[1..5] is [var who, "cracks", "flag", "whole aircraft"] && who == bad && c[6] == "stands");
        var main = page.QuerySelector("main")!.TextContent;
        Assert.Contains("Nobody's history tells which calls were right.", main, StringComparison.Ordinal);
        Assert.All(AlertPractice.All, p => Assert.Contains($"{p.Description} Source: {p.Source}.", main, StringComparison.Ordinal));
        using var plot = await server.Http.GetAsync(page.QuerySelector("figure img")!.GetAttribute("src"));
        Assert.Equal((HttpStatusCode.OK, "image/png"), (plot.StatusCode, plot.Content.Headers.ContentType!.MediaType));
        AssertReadable(page);
    }

    [Fact]
    public async Task A_type_group_that_is_not_there_says_so_and_a_key_that_may_not_read_sees_nothing()
    {
        await PlantedChange.PushAsync(server);
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);
        using var unknown = await server.Http.GetAsync("/backtest?type-group=%3Cnone%3E");
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
        var page = await Browser.ReadAsync(unknown);
        Assert.Contains("There is no type group \u201c<none>\u201d with aircraft.", page.QuerySelector("[role=status]")!.TextContent);
        Assert.NotNull(page.QuerySelector("main nav a[href='/backtest?type-group=welded']"));
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync("/backtest/plot.png?type-group=none")).StatusCode);
        using var stranger = server.HttpWith(null);
        foreach (var path in new[] { "/backtest", "/backtest/plot.png?type-group=welded" })
        {
            using var answer = await stranger.GetAsync(path);
            Assert.NotEqual(HttpStatusCode.OK, answer.StatusCode);
        }
    }

    /// <summary>What a reader needs who doesn't see the page, or not all of it at once.</summary>
    private static void AssertReadable(IDocument page)
    {
        Assert.Single(page.QuerySelectorAll("h1"));
        Assert.Equal("en", page.DocumentElement.GetAttribute("lang"));
        Assert.All(page.QuerySelectorAll("img"), i => Assert.True(i.GetAttribute("alt") is { Length: > 40 } && i.HasAttribute("width") && i.HasAttribute("height")));
        Assert.All(page.QuerySelectorAll("table"), t =>
        {
            Assert.NotEmpty(t.QuerySelector("caption")!.TextContent);
            Assert.All(t.QuerySelectorAll("th"), h => Assert.Contains(h.GetAttribute("scope"), new[] { "col", "row" }));
            Assert.All(t.QuerySelectorAll("tbody tr"), r => Assert.Equal(t.QuerySelectorAll("thead th").Length, r.Children.Length));
        });
        Assert.All(page.QuerySelectorAll(".scroll"), r => Assert.True(r.GetAttribute("tabindex") == "0" && r.GetAttribute("aria-label") is { Length: > 0 }));
        var identifiers = page.QuerySelectorAll("[id]").Select(e => e.Id!).ToList();
        Assert.Equal(identifiers.Distinct(StringComparer.Ordinal), identifiers);
        Assert.Contains(Cautions.Brief, page.QuerySelector("footer")!.TextContent, StringComparison.Ordinal);
    }

    private async Task<IDocument> PageAsync(string path)
    {
        using var answer = await server.Http.GetAsync(path);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return new HtmlParser().ParseDocument(await answer.Content.ReadAsStringAsync());
    }
}

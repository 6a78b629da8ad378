using System.Net;
using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>An aircraft of which nothing is written down is asked about, over the contract and on the page.</summary>
[Collection(SharedPostgres.Name)]
public sealed class TooQuietTests(PostgresFixture postgres)
{
    // Fourteen others with a crack in every third of 28 looks, and one with none.
    [Fact]
    public async Task A_quiet_aircraft_is_asked_about_and_the_others_are_listed_where_asked_for()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var fleet = new UnitFleet("welded", "flange-weld", "ZZ", hoursPerDay: 5);
        var quiet = fleet.Unit();
        for (var hours = 25.0; hours <= 1_425; hours += 50)
            fleet.Looked(quiet, hours);
        for (var i = 0; i < 14; i++)
        {
            var other = fleet.Unit();
            for (var hours = 25.0; hours <= 1_425; hours += 50)
            {
                fleet.Looked(other, hours);
                if (hours % 150 != 25 + i % 3 * 50)
                    continue;
                fleet.Found(other, hours, Condition.Crack);
                fleet.Done(other, hours, ActionKind.WeldRepaired);
            }
        }

        await fleet.PushAsync(server);
        using (var before = await server.Http.GetAsync("/too-quiet"))
            Assert.Contains("No refresh has run yet", await before.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var answer = await server.Trends.ListQuietAsync(new ListQuietRequest());
        var asked = Assert.Single(answer.Quiet);
        Assert.Equal((quiet, QuietVerdict.Asked, 0), (asked.Registration, asked.Verdict, asked.ObservedCount));
        Assert.InRange(asked.ExpectedCount, 8, 10.5); // the others have 9 or 10 each
        Assert.True(asked.Odds >= 9 && asked.HasHours && asked.Ratio.Upper < 1);
        Assert.Equal((Condition.Crack, 0), (Assert.Single(asked.Classes).Condition, asked.Classes[0].ObservedCount));
        Assert.NotEmpty(asked.RecordKeys);
        Assert.NotNull(answer.Freshness.AsOfTime);
        var question = Assert.Single(asked.Questions);
        Assert.StartsWith($"{quiet}: no finding in ", question, StringComparison.Ordinal);
        var all = (await server.Trends.ListQuietAsync(new ListQuietRequest { IncludeOrdinary = true })).Quiet;
        Assert.Equal(15, all.Count);
        Assert.Equal(quiet, all[0].Registration);
        Assert.All(all.Skip(1), q => Assert.Equal((QuietVerdict.Ordinary, 0), (q.Verdict, q.Questions.Count)));

        using var page = await server.Http.GetAsync("/too-quiet");
        var main = (await new HtmlParser().ParseDocumentAsync(await page.Content.ReadAsStreamAsync())).QuerySelector("main")!;
        Assert.Equal(question, Assert.Single(main.QuerySelectorAll("section[aria-labelledby=ft-quiet] li")).TextContent);
        using var one = await server.Http.GetAsync("/too-quiet?registration=zz-002");
        Assert.Contains("Nothing to ask", await one.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var unknown = await server.Http.GetAsync("/too-quiet?registration=ZZ-Q99");
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
    }
}

using System.Net;
using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>Levels over the contract and on the page.</summary>
[Collection(SharedPostgres.Name)]
public sealed class LevelQueryTests(PostgresFixture postgres)
{
    [Fact] // Every second look of one aircraft finds a crack, one look in six of the five others: it runs high, and the page says so of the same numbers.
    public async Task Levels_are_listed_most_probably_high_first()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var fleet = new UnitFleet("welded", "flange-weld", "ZZ", hoursPerDay: 5);
        var marks = Enumerable.Range(0, 6).Select(_ => fleet.Unit()).ToList();
        foreach (var (i, mark) in marks.Index())
        {
            for (var look = 0; look < 24; look++)
            {
                var hours = 25.0 + look * 50;
                fleet.Looked(mark, hours);
                if (look % (i == 0 ? 2 : 6) != 1)
                    continue;
                fleet.Found(mark, hours, Condition.Crack);
                fleet.Done(mark, hours, ActionKind.WeldRepaired);
            }
        }

        await fleet.PushAsync(server);
        using (var before = await server.Http.GetAsync("/levels"))
            Assert.Contains("nothing has been compared", await before.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var levels = (await server.Trends.ListLevelsAsync(new ListLevelsRequest { TypeGroup = "welded" })).Levels;
        Assert.Equal(6, levels.Count);
        var chances = levels.Select(l => l.ChanceAboveOneAndAHalf).ToList();
        Assert.Equal(chances.OrderDescending(), chances);
        Assert.Equal((marks[0], Condition.Crack, 12), (levels[0].Registration, levels[0].Condition, levels[0].ObservedCount));
        Assert.InRange(levels[0].Ratio.Value, 1, levels[0].ObservedCount / levels[0].ExpectedCount);
        var one = (await server.Trends.ListLevelsAsync(new ListLevelsRequest { Registration = marks[1] })).Levels;
        Assert.Equal(marks[1], Assert.Single(one).Registration);

        var page = await server.Http.GetStringAsync("/levels?type-group=welded");
        Assert.Equal(marks[0], new HtmlParser().ParseDocument(page).QuerySelector("main table tbody tr")!.Children[0].TextContent);
        using var unknown = await server.Http.GetAsync("/levels?type-group=nobody");
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
    }
}

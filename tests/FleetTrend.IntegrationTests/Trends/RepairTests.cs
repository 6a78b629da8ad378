using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>Whether repairs hold, over the contract, on the page and through the database.</summary>
[Collection(SharedPostgres.Name)]
public sealed class RepairTests(PostgresFixture postgres)
{
    private const double WeldMedian = 200;
    private const double ReplacedMedian = 900;
    private const double Shape = 1.8;
    private const int Aircraft = 40;

    // A simulated fleet with planted truth: after every weld half have cracked again by 200 h, after every replacement by 900 h (Weibull, shape 1.8), on
    // aircraft of which every other has 0.7 and 1.3 times that hazard; looks every 100 h over 2,400 h; what is found is welded or
    // replaced at once, by turns. The ratio of 4.5 lies within four standard errors of its logarithm, which the interval tells, and so does the share
    // of welds by 200 h, the mean of 1 - 2^-0.7 and 1 - 2^-1.3, within limits twice as far.
    [Fact]
    public async Task A_fleet_with_planted_repairs_gives_back_the_truth()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var fleet = new UnitFleet("welded", "y-weld", "ZZ", hoursPerDay: 4, start: DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-700));
        Simulate(fleet, new Random(11));
        await fleet.PushAsync(server);
        using (var before = await server.Http.GetAsync("/repairs"))
            Assert.Contains("No refresh has run yet", await before.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var answer = await server.Trends.ListRepairsAsync(new ListRepairsRequest());
        var repair = Assert.Single(answer.Repairs);
        Assert.Equal(("welded", "y-weld", Condition.Crack), (repair.TypeGroup, repair.Kind, repair.Condition));
        Assert.Equal([ActionKind.WeldRepaired, ActionKind.Replaced], repair.Actions.Select(a => a.Action).Order());
        Assert.Equal(fleet.Records.Count(r => r.Action is not null), repair.Actions.Sum(a => a.RepairCount));
        var comparison = Assert.Single(repair.Comparisons);
        Assert.Equal((ActionKind.Replaced, ActionKind.WeldRepaired, true), (comparison.Longer, comparison.Shorter, comparison.IsCalled));
        Assert.InRange(Math.Abs(Math.Log(comparison.TimesAsLong.Value / (ReplacedMedian / WeldMedian))), 0,
            2 * Math.Log(comparison.TimesAsLong.Upper / comparison.TimesAsLong.Value));
        Assert.True(comparison.AdjustedPValue < 0.001);
        var weld = repair.Actions.Single(a => a.Action == ActionKind.WeldRepaired).Shares.Single(s => s.Hours == 200).Share;
        Assert.InRange(1 - (Math.Pow(2, -0.7) + Math.Pow(2, -1.3)) / 2, weld.Value - (2 * (weld.Value - weld.Lower)),
            weld.Value + (2 * (weld.Upper - weld.Value)));
        Assert.Contains("A replacement holds about", repair.Statement, StringComparison.Ordinal);
        Assert.NotNull(answer.Freshness.AsOfTime);
        Assert.Equal([repair], (await server.Trends.ListRepairsAsync(new ListRepairsRequest { TypeGroup = "welded", Kind = "y-weld" })).Repairs);
        Assert.Empty((await server.Trends.ListRepairsAsync(new ListRepairsRequest { Kind = "gasket" })).Repairs);

        var main = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/repairs")).QuerySelector("main")!;
        Assert.Contains(repair.Statement, main.TextContent, StringComparison.Ordinal);
        Assert.Equal(2, main.QuerySelectorAll("table")[0].QuerySelectorAll("tbody tr").Length);
        Assert.Equal("holds longer", main.QuerySelectorAll("table")[1].QuerySelector("tbody tr")!.Children[3].TextContent);
    }

    private static void Simulate(UnitFleet fleet, Random random)
    {
        for (var i = 0; i < Aircraft; i++)
        {
            var registration = fleet.Unit();
            var longer = Math.Pow((i % 2 == 0 ? 0.7 : 1.3) * Math.Log(2), -1 / Shape);
            var back = 150.0;
            for (var look = 100.0; look <= 2400; look += 100)
            {
                fleet.Looked(registration, look);
                if (back > look)
                    continue;
                var isWelded = random.NextDouble() < 0.5;
                fleet.Found(registration, look, Condition.Crack);
                fleet.Done(registration, look, isWelded ? ActionKind.WeldRepaired : ActionKind.Replaced);
                back = look + ((isWelded ? WeldMedian : ReplacedMedian) * longer * Math.Pow(-Math.Log(1 - random.NextDouble()), 1 / Shape));
            }
        }
    }
}

using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>Whether one cylinder is worse than the others, over the contract, on the page and through the database.</summary>
[Collection(SharedPostgres.Name)]
public sealed class PositionTests(PostgresFixture postgres)
{
    private const double Planted = 3;
    private const double EveryHours = 700;

    // A simulated fleet with a planted cylinder: on two type groups of 15 aircraft each, watched for 2,000 h with looks every 100 h, every weld cracks at
    // random once in 700 h on average, on every other aircraft at 0.6 and 1.4 times that; No. 3 three times as often. What is found is welded. Of two cracks
    // between looks one is found: the true ratio of those found is (1 - exp(-3 x 100/700 x level)) / (1 - exp(-100/700 x level)), on average over levels
    // about 2.7. It lies within twice the limits' width.
    [Fact]
    public async Task A_fleet_with_a_planted_cylinder_gives_it_back()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var random = new Random(7);
        foreach (var group in (string[])["planted-one", "planted-two"])
        {
            var fleet = new UnitFleet(
                group, "place", group == "planted-one" ? "ZP" : "ZQ", hoursPerDay: 4, start: DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-600),
                more: [.. Enumerable.Range(1, 4).Select(i => (At(i), "flange-weld"))]);
            Simulate(fleet, random);
            await fleet.PushAsync(server);
        }

        using (var before = await server.Http.GetAsync("/positions"))
            Assert.Contains("No refresh has run yet", await before.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var answer = await server.Trends.ListPositionsAsync(new ListPositionsRequest());
        var trend = Assert.Single(answer.Positions);
        Assert.Equal(["planted-one", "planted-two"], trend.TypeGroups);
        Assert.Equal(("flange-weld", Condition.Crack, PositionSort.Cylinder, 30), (trend.Kind, trend.Condition, trend.Sort, trend.AircraftCount));
        Assert.Equal(["1", "2", "3", "4"], trend.Positions.Select(p => p.Name));
        var third = trend.Positions[2];
        Assert.Equal(PositionVerdict.MoreOften, third.Verdict);
        Assert.True(third.AdjustedPValue < 0.001);
        var truth = (Seen(Planted, 0.6) + Seen(Planted, 1.4)) / (Seen(1, 0.6) + Seen(1, 1.4));
        Assert.InRange(Math.Abs(Math.Log(third.TimesOthers.Value / truth)), 0, 2 * Math.Log(third.TimesOthers.Upper / third.TimesOthers.Value));
        Assert.All(trend.Positions.Where(p => !p.Equals(third)), p => Assert.NotEqual(PositionVerdict.MoreOften, p.Verdict));
        Assert.Contains("No. 3 had", trend.Statement, StringComparison.Ordinal);
        Assert.NotNull(answer.Freshness.AsOfTime);
        Assert.Equal([trend], (await server.Trends.ListPositionsAsync(new ListPositionsRequest { TypeGroup = "planted-two", Kind = "flange-weld" })).Positions);
        Assert.Empty((await server.Trends.ListPositionsAsync(new ListPositionsRequest { Kind = "gasket" })).Positions);

        // Its rows: every event that is counted, by the evidence of the kind.
        var rows = new List<EvidenceRow>();
        foreach (var group in trend.TypeGroups)
        {
            var asked = new ListEvidenceRequest { TypeGroup = group, Kind = trend.Kind, Condition = trend.Condition, PageSize = 1000 };
            rows.AddRange((await server.Trends.ListEvidenceAsync(asked)).Rows);
        }

        Assert.Equal(
            trend.Positions.Select(p => p.FindingCount),
            Enumerable.Range(1, 4).Select(i => rows.Count(r => r.Event is { PresentAtEntry: false, NotWatched: false } && r.Location == At(i))));
        Assert.Equal(
            trend.Positions.Select(p => p.ExposureHours),
            Enumerable.Range(1, 4).Select(i => rows.Where(r => r.Exposure is not null && r.Location == At(i))
                .Sum(r => r.Exposure.ToHours - r.Exposure.FromHours)));

        var main = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/positions")).QuerySelector("main")!;
        Assert.Contains(trend.Statement, main.TextContent, StringComparison.Ordinal);
        Assert.Equal("more often than the others", main.QuerySelectorAll("table tbody tr")[2].Children[6].TextContent);
    }

    private static string At(int cylinder) => $"exhaust/cyl-{cylinder}/flange-weld";

    private static double Seen(double times, double level) => 1 - Math.Exp(-times * level * 100 / EveryHours);

    private static void Simulate(UnitFleet fleet, Random random)
    {
        for (var i = 0; i < 15; i++)
        {
            var registration = fleet.Unit();
            for (var look = 100.0; look <= 2000; look += 100)
            {
                fleet.Looked(registration, look);
                for (var cylinder = 1; cylinder <= 4; cylinder++)
                {
                    // The first look is where watching begins.
                    if (look == 100 || random.NextDouble() >= Seen(cylinder == 3 ? Planted : 1, i % 2 == 0 ? 0.6 : 1.4))
                        continue;
                    fleet.Found(registration, look, Condition.Crack, At(cylinder));
                    fleet.Done(registration, look, ActionKind.WeldRepaired, At(cylinder));
                }
            }
        }
    }
}

using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>Which part number lasts longer, over the contract, on the pages and through the database.</summary>
[Collection(SharedPostgres.Name)]
public sealed class PartNumberTests(PostgresFixture postgres)
{
    private const string Second = "unit/second";
    private const double LongerMedian = 1200;
    private const double ShorterMedian = 500;
    private const double Shape = 2.5;
    private const int Aircraft = 40;

    // A simulated fleet with planted truth: each of 40 aircraft carries one gasket of either number from new; half of the one number have failed by 500 h, half
    // of the other by 1,200 h (Weibull, shape 2.5), on aircraft of which every other has 0.7 and 1.3 times that hazard; looks every 100 h over 1,500 h. The
    // ratio of 2.4 lies within twice the limits' width.
    [Fact]
    public async Task A_fleet_with_a_planted_part_number_gives_it_back()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var fleet = new UnitFleet(
            "two-numbers", "gasket", "ZN", hoursPerDay: 4, start: DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-500), more: [(Second, "gasket")]);
        Simulate(fleet, new Random(5));
        await fleet.PushAsync(server);
        using (var before = await server.Http.GetAsync("/part-numbers"))
            Assert.Contains("No refresh has run yet", await before.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var answer = await server.Trends.ListPartNumbersAsync(new ListPartNumbersRequest());
        var trend = Assert.Single(answer.PartNumbers);
        Assert.Equal(("two-numbers", "gasket", 0), (trend.TypeGroup, trend.Kind, trend.NotToldCount));
        Assert.Equal([("G-1", Aircraft, Aircraft), ("G-2", Aircraft, Aircraft)], trend.Numbers.Select(n => (n.PartNumber, n.LifeCount, n.AircraftCount)));
        Assert.Equal(fleet.Records.Count(r => r.Finding is not null), trend.Numbers.Sum(n => n.FailureCount));
        var life = trend.Comparisons.Single(c => c.Measure == PartNumberMeasure.Life);
        Assert.Equal(("G-2", "G-1", true), (life.Better, life.Worse, life.IsCalled));
        Assert.True(life.AdjustedPValue < 0.001);
        Assert.InRange(Math.Abs(Math.Log(life.Times.Value / (LongerMedian / ShorterMedian))), 0, 2 * Math.Log(life.Times.Upper / life.Times.Value));
        Assert.Contains("G-2 lasts about", trend.Statement, StringComparison.Ordinal);
        Assert.NotNull(answer.Freshness.AsOfTime);
        Assert.Equal([trend], (await server.Trends.ListPartNumbersAsync(new ListPartNumbersRequest { TypeGroup = "two-numbers", Kind = "gasket" })).PartNumbers);
        Assert.Empty((await server.Trends.ListPartNumbersAsync(new ListPartNumbersRequest { Kind = "coupling" })).PartNumbers);

        // Its rows: the lives of the kind, each with its part number.
        var rows = (await server.Trends.ListEvidenceAsync(new ListEvidenceRequest { TypeGroup = "two-numbers", Kind = "gasket", PageSize = 1000 })).Rows;
        Assert.Equal(
            trend.Numbers.Select(n => (n.PartNumber, n.LifeCount, n.FailureCount)),
            rows.Where(r => r.Life is { Exclusion.Length: 0 }).GroupBy(r => r.Life.PartNumber).OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => (g.Key, g.Count(), g.Count(r => r.Life.HasFirstBadHours))));

        foreach (var page in (string[])["/part-numbers", "/parts/two-numbers/gasket"])
        {
            var main = new HtmlParser().ParseDocument(await server.Http.GetStringAsync(page)).QuerySelector("main")!;
            Assert.Contains(trend.Statement, main.TextContent, StringComparison.Ordinal);
        }
    }

    private static void Simulate(UnitFleet fleet, Random random)
    {
        for (var i = 0; i < Aircraft; i++)
        {
            var registration = fleet.Unit("G-1");
            fleet.Installed(registration, Second, "G-2");
            var hazard = i % 2 == 0 ? 0.7 : 1.3;
            Dictionary<string, double> fails = new(StringComparer.Ordinal)
            {
                [UnitFleet.Location] = Age(ShorterMedian, hazard, random),
                [Second] = Age(LongerMedian, hazard, random),
            };
            for (var look = 0.0; look <= 1500; look += 100)
            {
                fleet.Looked(registration, look);
                foreach (var (location, age) in fails)
                {
                    if (age > look - 100 && age <= look)
                        fleet.Found(registration, look, Condition.LeakTrace, location);
                }
            }
        }
    }

    private static double Age(double median, double hazard, Random random) =>
        median * Math.Pow(-Math.Log(1 - random.NextDouble()) / (hazard * Math.Log(2)), 1 / Shape);
}

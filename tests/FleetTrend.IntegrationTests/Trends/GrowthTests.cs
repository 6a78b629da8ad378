using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>Which way kinds of place go, over the contract, on the page and through the database.</summary>
[Collection(SharedPostgres.Name)]
public sealed class GrowthTests(PostgresFixture postgres)
{
    private const double HoursPerDay = 1.25;
    private const double MostHours = 1300;

    // A simulated fleet with planted truth: 40 aircraft with gamma levels of shape 4, looked at every 100 h at 1.25 h a day for 1,040 days, cracks at
    // their flange
    // welds between looks at a rate that grows to three times in two years; at the flange welds of 40 others nothing changes. Each crack is welded as
    // it is found. The
    // truth lies within limits twice as far, and only the first are called.
    [Fact]
    public async Task A_fleet_with_a_planted_growth_gives_it_back()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        await Plant("worse", "ZZ", 3, 1).PushAsync(server);
        await Plant("steady", "ZY", 1, 2).PushAsync(server);
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var answer = await server.Trends.ListGrowthAsync(new ListGrowthRequest());
        Assert.Equal(["worse", "steady"], answer.Growth.Select(g => g.TypeGroup)); // what moves comes first
        var (worse, steady) = (answer.Growth[0], answer.Growth[1]);
        Assert.Equal(("flange-weld", Condition.Crack, GrowthClock.Types.Finding.Worse, GrowthClock.Types.Finding.NoneShown),
            (worse.Kind, worse.Condition, worse.Calendar.Finding, steady.Calendar.Finding));
        Within(3, worse.Calendar.Growth);
        Within(1, steady.Calendar.Growth);
        Within(1, steady.Hours.Growth);
        Assert.True(worse.Calendar.AdjustedPValue < 0.05 && worse.Calendar.EventCount > 60, $"{worse.Calendar}");
        Assert.NotNull(answer.Freshness.AsOfTime);
        Assert.Equal([worse], (await server.Trends.ListGrowthAsync(new ListGrowthRequest { TypeGroup = "worse", Kind = "flange-weld" })).Growth);

        var main = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/growth")).QuerySelector("main")!;
        Assert.Contains(worse.Statement, main.TextContent, StringComparison.Ordinal);
        Assert.Contains("welds of flange to stack, worse, cracks: getting worse; ", main.TextContent, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>A fleet whose cracks come so many times as often after two years.</summary>
    internal static UnitFleet Plant(string typeGroup, string mark, double ratio, int seed, int aircraft = 40)
    {
        var random = new Random(seed);
        var fleet = new UnitFleet(typeGroup, "flange-weld", mark, HoursPerDay, start: DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-(int)(MostHours / HoursPerDay) - 1));
        for (var i = 0; i < aircraft; i++)
        {
            // Cracks a look, in the middle of the time.
            var (registration, level) = (fleet.Unit(), 0.25 * Enumerable.Range(0, 4).Sum(_ => Exponential(random)) / 4);
            for (var look = 100.0; look <= MostHours; look += 100)
            {
                fleet.Looked(registration, look);
                var years = (look - 50 - (MostHours / 2)) / HoursPerDay / 365.25;
                var cracks = Count(random, level * Math.Exp(Math.Log(ratio) / 2 * years));
                for (var c = 0; c < cracks; c++)
                    fleet.Found(registration, look, Condition.Crack);
                if (cracks > 0)
                    fleet.Done(registration, look, ActionKind.WeldRepaired);
            }
        }

        return fleet;
    }

    private static double Exponential(Random random) => -Math.Log(1 - random.NextDouble());

    // A Poisson count: how many exponential gaps fit into the mean.
    private static int Count(Random random, double mean)
    {
        var count = 0;
        for (var at = Exponential(random); at <= mean; at += Exponential(random))
            count++;
        return count;
    }

    private static void Within(double truth, Figure figure) =>
        Assert.InRange(truth, figure.Value - (2 * (figure.Value - figure.Lower)), figure.Value + (2 * (figure.Upper - figure.Value)));
}

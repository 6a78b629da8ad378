using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>How soon leaks erode their port faces, over the contract, on the page and through the database.</summary>
[Collection(SharedPostgres.Name)]
public sealed class LeakErosionTests(PostgresFixture postgres)
{
    private const string Face = "unit/face";
    private const double Median = 250;
    private const double Shape = 2;

    // A simulated fleet with planted truth: each of 60 gaskets leaks at the look of 100 h and is deferred for up to 400 h, with a look every 50 h;
    // half of their
    // faces are eroded 250 h after the first trace (Weibull, shape 2). One more leaks since 100 h, its face good at 200 h and its next look at 300 h:
    // the chance
    // is 1 - S(200)/S(100), by the truth 1 - 2^-((200/250)^2 - (100/250)^2). Shares and chance lie within limits twice as far.
    [Fact]
    public async Task A_fleet_with_planted_erosion_gives_back_the_truth()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var fleet = new UnitFleet("leaky", "gasket", "ZZ", hoursPerDay: 4, start: DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-200), more: [(Face, "port-face")]);
        var random = new Random(7);
        for (var i = 0; i < 60; i++)
            Leave(fleet, Median * Math.Pow(-Math.Log(1 - random.NextDouble()) / Math.Log(2), 1 / Shape));
        var open = fleet.Unit();
        for (var look = 50.0; look <= 200; look += 50)
            fleet.Looked(open, look);
        Defer(fleet, open, 100);
        await fleet.PushAsync(server);
        using (var before = await server.Http.GetAsync("/leaks"))
            Assert.Contains("No refresh has run yet", await before.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var answer = await server.Trends.ListLeakErosionsAsync(new ListLeakErosionsRequest());
        var erosion = Assert.Single(answer.LeakErosions);
        Assert.Equal(("leaky", 61, 61, 0, 0), (erosion.TypeGroup, erosion.LeakCount, erosion.AircraftCount, erosion.ErodedAtFirstCount, erosion.NotLookedAtCount));
        Assert.Equal(fleet.Records.Count(r => r.Finding?.Condition == Condition.Erosion), erosion.ErodedCount);
        Assert.Equal([50, 100, 200], erosion.Shares.Select(s => s.Hours));
        Assert.All(erosion.Shares, s => Within(1 - Math.Pow(2, -Math.Pow(s.Hours / Median, Shape)), s.Share));
        var leak = Assert.Single(erosion.OpenLeaks);
        Assert.Equal((open, UnitFleet.Location, Face, 100, 100, 200, false),
            (leak.Registration, leak.Location, leak.FaceLocation, leak.HoursLeft, leak.GoodHours, leak.NextLookHours, leak.IsEroded));
        Within(1 - Math.Pow(2, Math.Pow(100 / Median, Shape) - Math.Pow(200 / Median, Shape)), leak.Chance);
        Assert.NotEmpty(leak.RecordKeys);
        Assert.NotNull(answer.Freshness.AsOfTime);
        Assert.Equal([erosion], (await server.Trends.ListLeakErosionsAsync(new ListLeakErosionsRequest { TypeGroup = "leaky" })).LeakErosions);

        var main = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/leaks")).QuerySelector("main")!;
        Assert.Contains(erosion.Statement, main.TextContent, StringComparison.Ordinal);
        Assert.StartsWith($"{open}, ", main.QuerySelector("li")!.TextContent, StringComparison.Ordinal);
    }

    private static void Leave(UnitFleet fleet, double eroded)
    {
        var registration = fleet.Unit();
        for (var look = 50.0; look <= 500; look += 50)
        {
            fleet.Looked(registration, look);
            if (look == 100)
                Defer(fleet, registration, look);
            var isEroded = look > 100 && look - 100 >= eroded;
            if (isEroded)
                fleet.Found(registration, look, Condition.Erosion, Face);
            if (isEroded || look == 500)
            {
                fleet.Done(registration, look, ActionKind.Replaced);
                return;
            }
        }
    }

    private static void Defer(UnitFleet fleet, string registration, double hours)
    {
        fleet.Found(registration, hours, Condition.LeakTrace);
        fleet.Done(registration, hours, ActionKind.Deferred);
    }

    private static void Within(double truth, Figure figure) =>
        Assert.InRange(truth, figure.Value - (2 * (figure.Value - figure.Lower)), figure.Value + (2 * (figure.Upper - figure.Value)));
}

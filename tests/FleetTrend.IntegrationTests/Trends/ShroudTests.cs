using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>Stop-drilled shrouds and clamp bolts, over the contract, on the page and through the database.</summary>
[Collection(SharedPostgres.Name)]
public sealed class ShroudTests(PostgresFixture postgres)
{
    private const string Edge = "exhaust/shroud/front-edge";
    private const string Bolt = "exhaust/left/clamp-bolt";

    // Planted: each of 12 shrouds cracks at 200 and 300 h and is stop-drilled; numbers 1 to 11 are replaced at 400, 500, ... 1,400 h, 200, 300, ... 1,200 h
    // after the first stop drill, the last is in service with an open crack. By 500 h four of twelve are renewed, by 1,000 h nine; even spread from 200 to
    // 1,200 h, a share of a third and of three quarters lies in the limits. Of the bolts number 1 is eroded at 1,500 h.
    [Fact]
    public async Task A_fleet_with_planted_renewals_gives_them_back()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var fleet = new UnitFleet("shrouded", "place", "ZZ", hoursPerDay: 4, start: DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-400), more: [(Edge, "shroud-edge"), (Bolt, "clamp-bolt")]);
        for (var i = 1; i <= 12; i++)
        {
            var registration = fleet.Unit();
            for (var look = 100.0; look <= 1500; look += 100)
            {
                fleet.Looked(registration, look);
                if (look is 200 or 300)
                    Crack(registration, look, ActionKind.StopDrilled);
                if (i < 12 && look == 300 + (100 * i))
                    Crack(registration, look, ActionKind.Replaced);
            }

            if (i == 1)
                fleet.Found(registration, 1500, Condition.Erosion, Bolt);
            if (i == 12)
                fleet.Found(registration, 1500, Condition.Crack, Edge);
        }

        await fleet.PushAsync(server);
        using (var before = await server.Http.GetAsync("/shrouds"))
            Assert.Contains("No refresh has run yet", await before.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var answer = await server.Trends.ListShroudsAsync(new ListShroudsRequest());
        var trend = Assert.Single(answer.Shrouds);
        Assert.Equal((12, 11, 2.0), (trend.ShroudCount, trend.RenewedCount, trend.StopDrillsAtRenewal));
        Assert.Equal((200.0, 1200.0), (trend.FewestHoursToRenewal, trend.MostHoursToRenewal));
        Assert.Equal([(200.0, 1, 11), (500.0, 4, 8), (1000.0, 9, 3)], trend.Shares.Select(s => (s.Hours, s.RenewedCount, s.InServiceCount)));
        Assert.InRange(1 / 3.0, trend.Shares[1].Share.Lower, trend.Shares[1].Share.Upper);
        Assert.InRange(0.75, trend.Shares[2].Share.Lower, trend.Shares[2].Share.Upper);
        var shroud = Assert.Single(trend.StopDrilledShrouds);
        Assert.Equal(("exhaust/shroud", 2, 1, 1300.0), (shroud.Shroud, shroud.StopDrillCount, shroud.OpenCrackCount, shroud.HoursSinceFirst));
        Assert.Equal([(HexState.Good, 11), (HexState.Eroded, 1)], trend.BoltCounts.Select(b => (b.State, b.BoltCount)));
        Assert.Equal((Bolt, HexState.Eroded), (trend.BadBolts[0].Location, trend.BadBolts[0].State));
        Assert.NotNull(answer.Freshness.AsOfTime);
        Assert.Equal([trend], (await server.Trends.ListShroudsAsync(new ListShroudsRequest { TypeGroup = "shrouded" })).Shrouds);

        var main = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/shrouds")).QuerySelector("main")!;
        Assert.Contains("Of 12 shrouds with stop drills 11 were renewed, 200 to 1,200 h after the first one, with 2.0 stop drills on average.", main.TextContent, StringComparison.Ordinal);

        void Crack(string registration, double hours, ActionKind done)
        {
            fleet.Found(registration, hours, Condition.Crack, Edge);
            fleet.Done(registration, hours, done, Edge);
        }
    }
}

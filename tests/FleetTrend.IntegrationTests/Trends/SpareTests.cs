using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>Spares over the contract and on the page, from records in the database.</summary>
[Collection(SharedPostgres.Name)]
public sealed class SpareTests(PostgresFixture postgres)
{
    private const double Shape = 2.5;
    private const double Scale = 500;
    private const double HoursPerDay = 2;
    private const int PastHours = 2_000;
    private const string Number = "gasket, invented";

    // Planted: gaskets of a Weibull law of shape 2.5 and scale 500 h on 60 aircraft that fly 2 h a day, looked at each 100 h on days of their own,
    // replaced when
    // found failed. What then comes is drawn 400 times from the planted law. The fit rests on some 200 failures, so that the mean it foresees is off
    // by some 7 %,
    // and by three times that in no set of a thousand.
    [Fact]
    public async Task A_planted_life_gives_back_what_will_be_needed()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var (fleet, ages) = Fleet();
        await fleet.PushAsync(server);
        using (var before = await server.Http.GetAsync("/spares"))
            Assert.Contains("No refresh has run yet", await before.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await RefreshAsync(server);

        var untold = Assert.Single((await server.Trends.ListSparesAsync(new ListSparesRequest())).Spares);
        Assert.Equal(("test stand", Number, 60, 0), (untold.Base, untold.PartNumber, untold.PartCount, untold.AgeUnknownCount));
        Assert.Equal(["gasket"], untold.Kinds);
        Assert.InRange(untold.FailureCount, 150, 300);
        Assert.Equal([30, 90, 180], untold.Horizons.Select(h => h.Days));
        var random = new Random(5);
        foreach (var horizon in untold.Horizons)
        {
            var truth = Enumerable.Range(0, 400).Average(_ => ages.Sum(a => Needed(random, a.Age, a.Hours, horizon.Days)));
            Assert.InRange(horizon.MeanCount, 0.79 * truth, 1.21 * truth);
            Assert.True(horizon.LowerCount < horizon.MeanCount && horizon.MeanCount < horizon.NeededCount && horizon.NeededCount <= horizon.UpperCount);
            Assert.False(horizon.HasMissingCount);
        }

        Assert.Null(untold.Stock);
        Assert.False(untold.HasOrderWithinDays);

        // Five are on the shelf: what is missing follows, and the next count takes its place.
        var needed = untold.Horizons[0].NeededCount;
        var told = await ToldAsync(server, 1, DateTime.UtcNow, 5, 30);
        Assert.Equal((5, 0, 5, 30), (told.Stock.Quantity, told.Stock.UsedSinceCount, told.Stock.OnHandCount, told.Stock.LeadTimeDays));
        Assert.Equal(needed - 5, told.Horizons[0].MissingCount);
        Assert.Equal(0, told.OrderWithinDays);
        Assert.Equal(
            $"test stand is short by {needed - 5} exhaust gaskets ({Number}) within 30 days: 5 on hand, {needed} would be enough with a chance of 95 %; "
            + "delivery takes 30 days: order now",
            told.Statement);
        var main = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/spares")).QuerySelector("main")!;
        Assert.Contains(told.Statement, main.TextContent, StringComparison.Ordinal);
        Assert.Equal([.. "test stand|Exhaust gaskets (gasket, invented)|60".Split('|')], main.QuerySelector("tbody tr")!.Children.Take(3).Select(c => c.TextContent));
        var enough = await ToldAsync(server, 2, DateTime.UtcNow, 500, 30);
        Assert.Equal([0, 0, 0], enough.Horizons.Select(h => h.MissingCount));
        Assert.DoesNotContain((await server.Trends.ListSparesAsync(new ListSparesRequest { Base = "*", PageToken = "" })).Spares, s => s.HasOrderWithinDays);
    }

    private static async Task<SpareNeed> ToldAsync(ApiServer server, int record, DateTime day, int quantity, int lead)
    {
        var count = new StockCount
        {
            CountDate = new() { Year = day.Year, Month = day.Month, Day = day.Day },
            Base = "test stand",
            PartNumber = Number,
            Quantity = quantity,
            LeadTimeDays = lead,
        };
        var pushed = await (await server.IntakeOfAsync("published")).PushRecordAsync(new PushRecordRequest
        {
            Record = new Record { Key = new RecordKey { Source = "published", SourceRecordId = $"shelf {record}", Revision = 1 }, StockCount = count },
        });
        Assert.Equal(RecordState.Accepted, pushed.Outcome.State);
        await RefreshAsync(server);
        return Assert.Single((await server.Trends.ListSparesAsync(new ListSparesRequest { Base = "test stand" })).Spares);
    }

    private static Task<DateTimeOffset> RefreshAsync(ApiServer server) => server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

    /// <summary>The records of the past, and of each aircraft the age of its gasket at the last look and the hours then.</summary>
    private static (UnitFleet Fleet, List<(double Age, double Hours)> Ages) Fleet()
    {
        var random = new Random(3);
        var fleet = new UnitFleet("gaskets", "gasket", "ZZ", HoursPerDay, start: DateOnly.FromDateTime(DateTime.UtcNow).AddDays((int)(-PastHours / HoursPerDay)));
        List<(double Age, double Hours)> ages = [];
        for (var i = 0; i < 60; i++)
        {
            var unit = fleet.Unit(Number);
            var (installed, fails, last) = (0.0, Life(random, 0), 0.0);
            for (var hours = 10.0 * (1 + i % 10); hours <= PastHours; hours += 100)
            {
                fleet.Looked(unit, hours);
                last = hours;
                if (installed + fails > hours)
                    continue;
                fleet.Found(unit, hours, Condition.LeakTrace);
                fleet.Done(unit, hours, ActionKind.Replaced);
                (installed, fails) = (hours, Life(random, 0));
            }

            ages.Add((last - installed, last));
        }

        return (fleet, ages);
    }

    /// <summary>A draw of what one gasket needs until a day, from its last good look on.</summary>
    private static int Needed(Random random, double age, double hours, int days)
    {
        var (needed, fails, end) = (0, Life(random, age), PastHours + HoursPerDay * days);
        for (var look = hours + 100; look <= end; look += 100)
        {
            age += 100;
            if (fails > age)
                continue;
            needed++;
            (age, fails) = (0, Life(random, 0));
        }

        return needed;
    }

    private static double Life(Random random, double age) =>
        Scale * Math.Pow(Math.Pow(age / Scale, Shape) - Math.Log(1 - random.NextDouble()), 1 / Shape);
}

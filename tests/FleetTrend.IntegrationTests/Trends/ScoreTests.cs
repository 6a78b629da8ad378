using System.Text.Json;
using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using FleetTrend.Statistics.Lives;
using FleetTrend.Store.Forecasts;
using FleetTrend.Trends;
using FleetTrend.Trends.Scores;
using Microsoft.Extensions.DependencyInjection;
using LifeLaw = FleetTrend.Trends.FailureChances.LifeLaw;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>How right forecasts were, through the database, over the contract and on the pages.</summary>
[Collection(SharedPostgres.Name)]
public sealed class ScoreTests(PostgresFixture postgres)
{
    private const string TypeGroup = "gaskets";

    private static readonly Quarter Running = Quarter.Of(DateOnly.FromDateTime(DateTime.UtcNow));
    private static readonly Quarter First = Running.Previous.Previous;

    // Sixty gaskets, looked at every 50 h at 2 h a day from 300 days before the two quarters on, leak one after the other in them: all 60 are found. What was
    // published at the beginning of the first quarter gave them a mean life of 20,000 h: 1 - exp(-0.0025) a look.
    [Fact]
    public async Task What_was_published_is_held_against_what_was_found()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var fleet = Leaking();
        await fleet.PushAsync(server);
        Assert.StartsWith("Nothing is scored yet", await FirstSentenceAsync(server, refresh: true), StringComparison.Ordinal);

        var store = server.Services.GetRequiredService<ForecastStore>();
        LifeLaw[] laws = [new("gasket", null, "Weibull", 20, 40) { Estimate = new LifeEstimate(LifeDistribution.Weibull, 20_000, 1, new LogCovariance(0.05, 0, 0)) }];
        var asOf = new DateTimeOffset(First.StartDate, new TimeOnly(0, 1), TimeSpan.Zero).AddDays(-1);
        var kept = new KeptForecast(TypeGroup, Analyses.FailureChances.Name, asOf, JsonSerializer.Serialize(laws, TrendJson.Options));
        await store.KeepAsync(First.Previous.StartDate, [kept], default);
        fleet.Unit(); // something new, so that the type group is computed again
        await fleet.PushMoreAsync(server);
        Assert.Equal("Off in the last two quarters: chances before the next look (gaskets).", await FirstSentenceAsync(server, refresh: true));

        var scores = (await server.Trends.ListScoresAsync(new ListScoresRequest())).Scores;
        Assert.Equal(
            [Running.StartDate, Running.Previous.StartDate, First.StartDate],
            scores.Take(3).Select(s => DateOnly.FromDateTime(s.QuarterStartDate.ToDateTime())));
        Assert.Equal([false, true, true], scores.Take(3).Select(s => s.IsOver));
        var two = scores[1].ChancesOfTwo;
        Assert.Equal((60, ScoreVerdict.Off), (two.FoundCount, two.Verdict));
        Assert.Equal(two.LookCount * (1 - Math.Exp(-50 / 20_000.0)), two.ExpectedCount, 3);
        Assert.Equal(60, scores[1].Chances.FoundCount + scores[2].Chances.FoundCount);
        Assert.Equal(ScoreVerdict.NotJudged, scores[0].Chances.Verdict);
        Assert.Empty(scores[0].Statements);
        Assert.EndsWith("would fit): these chances are off.", Assert.Single(scores[1].Statements), StringComparison.Ordinal);

        // It is said beside the chances, over the contract and on their page.
        var off = Assert.Single((await server.Trends.ListFailureChancesAsync(new ListFailureChancesRequest())).OffStatements);
        Assert.StartsWith("Gaskets: in the last two quarters (", off, StringComparison.Ordinal);
        Assert.Contains("60 were found failed where", off, StringComparison.Ordinal);
        Assert.Contains(off, TextOf(await server.Http.GetStringAsync("/chances")), StringComparison.Ordinal);
        var ofGroup = await server.Trends.ListScoresAsync(new ListScoresRequest { TypeGroup = TypeGroup });
        Assert.Equal(scores.Where(s => s.TypeGroup == TypeGroup), ofGroup.Scores);
    }

    [Fact] // The first publishing of a quarter keeps what it forecast; the next one of the same quarter does not replace it.
    public async Task A_quarter_keeps_what_was_published_first()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var fleet = Leaking();
        await fleet.PushAsync(server);
        var refresh = server.Services.GetRequiredService<TrendRefresh>();
        var first = await refresh.RunAsync(default);
        fleet.Unit();
        await fleet.PushMoreAsync(server);
        var second = await refresh.RunAsync(default);
        var kept = await server.Services.GetRequiredService<ForecastStore>().ReadAsync(TypeGroup, first.AddYears(-1), second.AddSeconds(1), default);
        Assert.Equal(KeptForecasts.Names.Order(StringComparer.Ordinal), kept.Select(k => k.Analysis).Order(StringComparer.Ordinal));
        var laws = Assert.Single(kept, k => k.Analysis == Analyses.FailureChances.Name);
        Assert.Equal(first, laws.AsOf, TimeSpan.FromMicroseconds(1));
        var law = Assert.Single(JsonSerializer.Deserialize<LifeLaw[]>(laws.DetailJson, TrendJson.Options)!, l => l.Base is null);
        var answered = Assert.Single((await server.Trends.ListChanceCalibrationsAsync(new ListChanceCalibrationsRequest())).ChanceCalibrations).Laws[0];
        Assert.Equal((answered.Kind, answered.Distribution, answered.FailureCount), (law.Kind, law.Distribution, law.Failures));
        Assert.Empty(await server.Services.GetRequiredService<ForecastStore>().ReadAsync(TypeGroup, first.AddYears(-1), first, default)); // not known before
    }

    private static UnitFleet Leaking()
    {
        var fleet = new UnitFleet(TypeGroup, "gasket", "ZZ", hoursPerDay: 2, start: First.StartDate.AddDays(-300));
        for (var i = 0; i < 60; i++)
        {
            var unit = fleet.Unit();
            var failed = 650 + (50 * (i % 6)); // days 325 to 450
            for (var hours = 50; hours <= failed; hours += 50)
                fleet.Looked(unit, hours);
            fleet.Found(unit, failed, Condition.LeakTrace);
        }

        var good = fleet.Unit(); // one that is in service
        for (var hours = 50; hours <= 950; hours += 50)
            fleet.Looked(good, hours);

        return fleet;
    }

    private static async Task<string> FirstSentenceAsync(ApiServer server, bool refresh)
    {
        if (refresh)
            await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);
        return new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/score")).QuerySelector("main section p")!.TextContent;
    }

    private static string TextOf(string page) => new HtmlParser().ParseDocument(page).QuerySelector("main")!.TextContent;
}

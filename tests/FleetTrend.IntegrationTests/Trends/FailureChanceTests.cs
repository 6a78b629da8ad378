using System.Net;
using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>Chances before the next look, over the contract and on the page.</summary>
[Collection(SharedPostgres.Name)]
public sealed class FailureChanceTests(PostgresFixture postgres)
{
    // Twenty-four gaskets that leaked at 250 to 820 h and were left, looked at every 50 h until then; two that go on, last seen good at 300 h and 800 h.
    [Fact]
    public async Task Parts_in_service_have_a_chance_and_the_older_one_the_greater()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var fleet = new UnitFleet("gaskets", "gasket", "ZZ", hoursPerDay: 2, start: DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-450));
        for (var i = 0; i < 24; i++)
        {
            var failed = fleet.Unit();
            var at = 250.0 + 25 * (i % 24);
            for (var hours = 50.0; hours < at; hours += 50)
                fleet.Looked(failed, hours);
            fleet.Looked(failed, at);
            fleet.Found(failed, at, Condition.LeakTrace);
        }

        var (young, old) = (fleet.Unit(), fleet.Unit());
        for (var hours = 50.0; hours <= 800; hours += 50)
        {
            if (hours <= 300)
                fleet.Looked(young, hours);
            fleet.Looked(old, hours);
        }

        await fleet.PushAsync(server);
        using (var before = await server.Http.GetAsync("/chances"))
            Assert.Contains("No refresh has run yet", await before.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var answer = await server.Trends.ListFailureChancesAsync(new ListFailureChancesRequest());
        Assert.Equal([old, young], answer.FailureChances.Select(c => c.Registration)); // those that failed are in service no more
        var (first, second) = (Assert.Single(answer.FailureChances[0].Parts), Assert.Single(answer.FailureChances[1].Parts));
        Assert.Equal((800, 800, 900), (first.GoodHours, first.AgeHours, first.NextLookHours));
        Assert.Equal((300, 300, 400), (second.GoodHours, second.AgeHours, second.NextLookHours));
        Assert.True(first.Lower < first.Chance && first.Chance < first.Upper && first.Chance > 2 * second.Chance && second.Chance > 0);
        Assert.Equal(first.Chance, answer.FailureChances[0].ExpectedCount);
        Assert.NotEmpty(answer.FailureChances[0].RecordKeys);
        Assert.NotNull(answer.Freshness.AsOfTime);
        var ofOne = await server.Trends.ListFailureChancesAsync(new ListFailureChancesRequest { Registration = young });
        Assert.Equal([answer.FailureChances[1]], ofOne.FailureChances);

        var calibration = Assert.Single((await server.Trends.ListChanceCalibrationsAsync(new ListChanceCalibrationsRequest())).ChanceCalibrations);
        var law = calibration.Laws[0];
        Assert.Equal(("gaskets", "gasket", 24, 26), (calibration.TypeGroup, law.Kind, law.FailureCount, law.LifeCount));
        Assert.Equal(0, calibration.LookCount); // nothing had failed a year ago

        var main = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/chances")).QuerySelector("main")!;
        Assert.Equal([old, young], main.QuerySelector("table")!.QuerySelectorAll("tbody tr").Select(r => r.Children[0].TextContent));
        var one = new HtmlParser().ParseDocument(await server.Http.GetStringAsync($"/chances?registration={old}"));
        Assert.Equal("Unit place", one.QuerySelector("main tbody tr")!.Children[0].TextContent);
        using var unknown = await server.Http.GetAsync("/chances?registration=ZZ-Q99");
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
    }
}

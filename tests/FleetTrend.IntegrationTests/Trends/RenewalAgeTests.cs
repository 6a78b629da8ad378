using System.Text.Json;
using AngleSharp.Html.Parser;
using FleetTrend.Cli.Commands;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>When to renew and how often to look, over the contract, on pages and through the database.</summary>
[Collection(SharedPostgres.Name)]
public sealed class RenewalAgeTests(PostgresFixture postgres)
{
    // A simulated fleet with planted truth: gaskets of Weibull shape 3.5 and scale 900 h on 60 aircraft, looked at every 50 h for 2,500 h and
    // replaced when found
    // failed. With a failure that costs 5 planned renewals the best age is 467.63 h, which costs 0.0030271858 an hour where running to failure costs
    // 0.0061745740: it saves 50.97 % (case age-replacement-weibull, R). The longest look interval up to the age that is told is by the truth that in whose last
    // interval 5 % fail: age - 900 ((age/900)^3.5 + ln 0.95)^(1/3.5).
    [Fact]
    public async Task A_fleet_with_a_planted_life_gives_back_its_best_age()
    {
        await using var server = await ApiServer.StartAsync(postgres);
        var fleet = new UnitFleet("sealed", "gasket", "ZZ", hoursPerDay: 5);
        var random = new Random(11);
        for (var i = 0; i < 60; i++)
            Watch(fleet, random);
        await fleet.PushAsync(server);
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

        var answer = await server.Trends.ListRenewalAgesAsync(new ListRenewalAgesRequest());
        var age = Assert.Single(answer.RenewalAges);
        Assert.Equal(("sealed", "gasket", "", RenewalAge.Types.Finding.Renew), (age.TypeGroup, age.Kind, age.Base, age.Finding));
        Assert.Equal(fleet.Records.Count(r => r.Finding is not null), age.FailureCount);
        Assert.True(age.FailureCount > 100, $"{age.FailureCount} failures");
        Within(3.5, age.Shape);
        Within(467.63, age.CheapestAge);
        Within(0.5097, age.Saved);
        Assert.InRange(age.Saved.Value, 0.4, 0.6);
        Within(age.AgeHours - (900 * Math.Pow(Math.Pow(age.AgeHours / 900, 3.5) + Math.Log(0.95), 1 / 3.5)), age.LongestLook);
        Assert.Equal((5.0, 0.05, 100.0, false, false), (age.CostRatio, age.AllowedChance, age.SetLookHours, age.HasMakerRenewalHours, age.HasMakerLookHours));
        Assert.NotNull(answer.Freshness.AsOfTime);
        Assert.Equal([age], (await server.Trends.ListRenewalAgesAsync(new ListRenewalAgesRequest { TypeGroup = "sealed", Kind = "gasket" })).RenewalAges);

        foreach (var path in new[] { "/renewal", "/parts/sealed/gasket" })
        {
            var main = new HtmlParser().ParseDocument(await server.Http.GetStringAsync(path)).QuerySelector("main")!;
            Assert.Contains(age.Statement, main.TextContent, StringComparison.Ordinal);
            Assert.Contains("No limit of the maker has been told: look it up before using this age.", main.TextContent, StringComparison.Ordinal);
            Assert.Contains("the licensed person who signs decide", main.TextContent, StringComparison.Ordinal);
        }

        // Its rows lead back to it: the Weibull law that fleettrend analyze finds in them has its best age there, h(T) * mean up to T - F(T) = 1/(5 - 1).
        var (shape, scale) = await WeibullOfRowsAsync(server);
        var reached = Math.Pow(age.CheapestAge.Value / scale, shape);
        const int steps = 2000;
        var mean = Enumerable.Range(0, steps + 1).Sum(i => (i is 0 or steps ? 1 : i % 2 == 1 ? 4 : 2) * Math.Exp(-reached * Math.Pow((double)i / steps, shape)))
            * age.CheapestAge.Value / steps / 3;
        Assert.Equal(0.25, (shape / age.CheapestAge.Value * reached * mean) - 1 + Math.Exp(-reached), 5);
        Assert.Equal(shape, age.Shape.Value, 6);

        // The maker's limit is told, and caps both from the next refresh on.
        var parameters = (await server.Parameters.GetParametersAsync(new GetParametersRequest())).Parameters.Parameters;
        parameters.MakerLimits.Add(new MakerLimit { Kind = "gasket", RenewalHours = 250, LookHours = 25 });
        await server.Parameters.ChangeParametersAsync(new ChangeParametersRequest { Parameters = parameters, Revision = 0, Note = "the maker's manual" });
        await server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);
        var capped = Assert.Single((await server.Trends.ListRenewalAgesAsync(new ListRenewalAgesRequest())).RenewalAges);
        Assert.Equal((250, 25, 250, 25, age.CheapestAge),
            (capped.AgeHours, capped.LookHours, capped.MakerRenewalHours, capped.MakerLookHours, capped.CheapestAge));
        var shown = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/renewal")).QuerySelector("main")!;
        Assert.Contains("That is the maker's or the regulation's limit", shown.TextContent, StringComparison.Ordinal);
    }

    private static async Task<(double Shape, double Scale)> WeibullOfRowsAsync(ApiServer server)
    {
        var path = Path.GetTempFileName();
        try
        {
            await File.WriteAllTextAsync(path, await server.Http.GetStringAsync("/traces/lives.csv?typeGroup=sealed&kind=gasket"));
            using var output = new StringWriter();
            Assert.Equal(0, AnalyzeLifeCommand.Run(new AnalyzeSettings { File = path, Json = true, Confidence = 0.95 }, output, TextWriter.Null));
            using var document = JsonDocument.Parse(output.ToString());
            var law = document.RootElement.GetProperty("fits").EnumerateArray().Single(f => f.GetProperty("distribution").GetString() == "weibull");
            return (law.GetProperty("shape").GetDouble(), law.GetProperty("scale").GetDouble());
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static void Watch(UnitFleet fleet, Random random)
    {
        var registration = fleet.Unit();
        var fails = Draw(random);
        var installed = 0.0;
        for (var look = 50.0; look <= 2500; look += 50)
        {
            fleet.Looked(registration, look);
            if (look - installed < fails)
                continue;
            fleet.Found(registration, look, Condition.LeakTrace);
            fleet.Done(registration, look, ActionKind.Replaced);
            (installed, fails) = (look, Draw(random));
        }
    }

    private static double Draw(Random random) => 900 * Math.Pow(-Math.Log(1 - random.NextDouble()), 1 / 3.5);

    private static void Within(double truth, Figure figure) =>
        Assert.InRange(truth, figure.Value - (2 * (figure.Value - figure.Lower)), figure.Value + (2 * (figure.Upper - figure.Value)));
}

using System.Net;
using System.Text.Json;
using AngleSharp.Html.Parser;
using FleetTrend.Cli.Commands;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>From a figure to its rows as CSV, and from the rows through <c>fleettrend analyze</c> to the same figure.</summary>
[Collection(SharedPostgres.Name)]
public sealed class TraceTests(PostgresFixture postgres) : IAsyncLifetime
{
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task Every_rate_is_the_rate_of_its_rows()
    {
        await PlantedChange.PushAsync(server);
        await RefreshAsync();
        var rates = (await server.Trends.ListRatesAsync(new ListRatesRequest { PageSize = 1000 })).Rates.Where(r => r.Rate_.HasValue).ToList();
        Assert.Contains(rates, r => r.Rate_.EventCount > 0);
        foreach (var rate in rates)
        {
            var pooled = (await AnalyzeAsync(
                "rate", $"typeGroup={rate.TypeGroup}&location={Uri.EscapeDataString(rate.Location)}&kind={rate.Kind}&condition={Name(rate.Condition)}")).GetProperty("pooled");
            Assert.Equal(rate.Rate_.Value, 1000 * pooled.GetProperty("rate").GetDouble(), 9);
            Assert.Equal(rate.Rate_.Lower, 1000 * pooled.GetProperty("lower").GetDouble(), 9);
            double? upper = pooled.GetProperty("upper") is { ValueKind: JsonValueKind.Number } told ? Math.Round(1000 * told.GetDouble(), 9) : null;
            Assert.Equal(rate.Rate_.HasUpper ? Math.Round(rate.Rate_.Upper, 9) : null, upper);
        }
    }

    [Fact]
    public async Task Every_life_curve_is_the_curve_of_its_rows()
    {
        await PushGasketsAsync();
        var lives = (await server.Trends.ListPartLivesAsync(new ListPartLivesRequest())).PartLives.Where(l => l.Curve.Count > 0).ToList();
        Assert.Equal(2, lives.Count); // all gaskets, and those of the one base
        foreach (var life in lives)
        {
            var analysed = await AnalyzeAsync("life", $"typeGroup={life.TypeGroup}&kind={life.Kind}&base={Uri.EscapeDataString(life.Base)}");
            Assert.Equal((life.LifeCount, life.FailureCount), (analysed.GetProperty("lives").GetInt32(), analysed.GetProperty("failures").GetInt32()));
            Assert.Equal(
                life.Curve.Select(s => (s.LowerHours, Math.Round(s.Cumulative, 9))),
                analysed.GetProperty("nonparametric").EnumerateArray().Select(m => (m.GetProperty("lower").GetDouble(), Math.Round(m.GetProperty("cdf").GetDouble(), 9))));
        }
    }

    [Fact] // From the list of kinds to one, its plot and its rows.
    public async Task A_kind_of_part_leads_to_its_curve_its_bases_and_its_rows()
    {
        await PushGasketsAsync();
        var list = new HtmlParser().ParseDocument(await server.Http.GetStringAsync("/parts"));
        var kind = new HtmlParser().ParseDocument(await server.Http.GetStringAsync(Assert.Single(list.QuerySelectorAll("main tbody a")).GetAttribute("href")));
        Assert.Equal(["test stand", "All bases"], kind.QuerySelectorAll("section[aria-labelledby=ft-part-lives] tbody th").Select(h => h.TextContent));
        using var plot = await server.Http.GetAsync(kind.QuerySelector("img")!.GetAttribute("src"));
        Assert.Equal((HttpStatusCode.OK, "image/png"), (plot.StatusCode, plot.Content.Headers.ContentType!.MediaType));
        Assert.StartsWith("lower,upper,entry,count\n", await server.Http.GetStringAsync(kind.QuerySelector("main a[href^='/traces']")!.GetAttribute("href")), StringComparison.Ordinal);
        foreach (var address in new[] { "/parts/nobody/gasket", "/parts/plot.png?type-group=nobody&kind=gasket" })
        {
            using var unknown = await server.Http.GetAsync(address);
            Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
        }
    }

    [Fact]
    public async Task Every_mean_function_is_that_of_its_rows()
    {
        await PlantedChange.PushAsync(server);
        await RefreshAsync();
        var recurrences = (await server.Trends.ListRecurrencesAsync(new ListRecurrencesRequest())).Recurrences.Where(r => r.Points.Count > 0).ToList();
        Assert.NotEmpty(recurrences);
        foreach (var recurrence in recurrences)
        {
            var analysed = await AnalyzeAsync(
                "recurrence", $"typeGroup={recurrence.TypeGroup}&location={Uri.EscapeDataString(recurrence.Location)}&condition={Name(recurrence.Condition)}");
            Assert.Equal(
                recurrence.Points.Select(p => (p.TimeInServiceHours, Math.Round(p.Value, 9), Math.Round(p.StandardError, 9))),
                analysed.GetProperty("meanCumulative").EnumerateArray().Select(
                    p => (p.GetProperty("time").GetDouble(), Math.Round(p.GetProperty("value").GetDouble(), 9), Math.Round(p.GetProperty("standardError").GetDouble(), 9))));
        }
    }

    [Fact]
    public async Task Every_growth_is_that_of_its_rows()
    {
        await GrowthTests.Plant("worse", "ZZ", 3, 1, aircraft: 12).PushAsync(server);
        await RefreshAsync();
        var growth = Assert.Single((await server.Trends.ListGrowthAsync(new ListGrowthRequest())).Growth);
        foreach (var (clock, told) in new[] { ("calendar", growth.Calendar), ("hours", growth.Hours) })
        {
            var analysed = await AnalyzeAsync("growth", $"typeGroup={growth.TypeGroup}&kind={growth.Kind}&condition={Name(growth.Condition)}&clock={clock}");
            Assert.Equal(told.EventCount, analysed.GetProperty("events").GetInt32());
            Assert.Equal(told.Growth.ExposureHours, analysed.GetProperty("exposure").GetDouble(), 6);
            var law = analysed.GetProperty(clock == "calendar" ? "logLinear" : "powerLaw");
            foreach (var (figure, name) in new[] { (told.Growth.Value, "growth"), (told.Growth.Lower, "lower"), (told.Growth.Upper, "upper") })
                Assert.Equal(figure, clock == "calendar" ? Math.Exp(2 * law.GetProperty(name).GetDouble()) : law.GetProperty(name).GetDouble(), 9);
        }
    }

    [Theory]
    [InlineData("/traces/growth.csv?typeGroup=welded&kind=flange-weld&condition=CONDITION_CRACK", HttpStatusCode.BadRequest, "clock: must be given")]
    [InlineData("/traces/growth.csv?typeGroup=welded&kind=flange-weld&condition=CONDITION_CRACK&clock=moon", HttpStatusCode.BadRequest, "clock: must be calendar or hours; got")]
    [InlineData("/traces/rate.csv?condition=CONDITION_CRACK", HttpStatusCode.BadRequest, "typeGroup: must be given")]
    [InlineData("/traces/rate.csv?typeGroup=welded&condition=crack", HttpStatusCode.BadRequest, "condition: must be a condition such as CONDITION_CRACK; got")]
    [InlineData("/traces/lives.csv?typeGroup=welded&kind=nothing", HttpStatusCode.NotFound, "must be a location kind")]
    [InlineData("/traces/recurrence.csv?typeGroup=nobody&location=unit/place&condition=CONDITION_CRACK", HttpStatusCode.NotFound, "must be a registered type group")]
    public async Task What_is_not_known_is_refused(string address, HttpStatusCode status, string words)
    {
        await PlantedChange.PushAsync(server);
        await RefreshAsync();
        using var answer = await server.Http.GetAsync(address);
        Assert.Equal(status, answer.StatusCode);
        Assert.Contains(words, (await answer.Content.ReadAsStringAsync()).Replace("\\u0022", "\"", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    private async Task PushGasketsAsync()
    {
        var gaskets = new UnitFleet("sealed", "gasket", "ZZ", hoursPerDay: 5);
        foreach (var failed in new[] { 200, 300, 300, 500, 0, 0 })
        {
            var unit = gaskets.Unit();
            for (var hours = 100; hours <= 700; hours += 100)
            {
                gaskets.Looked(unit, hours);
                if (hours != failed)
                    continue;
                gaskets.Found(unit, hours, Condition.LeakTrace);
                gaskets.Done(unit, hours, ActionKind.Replaced);
            }
        }

        await gaskets.PushAsync(server);
        await RefreshAsync();
    }

    private Task<DateTimeOffset> RefreshAsync() => server.Services.GetRequiredService<TrendRefresh>().RunAsync(default);

    private async Task<JsonElement> AnalyzeAsync(string what, string query)
    {
        var name = what == "life" ? "lives" : what;
        var path = Path.GetTempFileName();
        try
        {
            await File.WriteAllTextAsync(path, await server.Http.GetStringAsync($"/traces/{name}.csv?{query}"));
            using var output = new StringWriter();
            using var error = new StringWriter();
            var settings = new AnalyzeSettings { File = path, Json = true, Confidence = 0.95 };
            var code = what switch
            {
                "life" => AnalyzeLifeCommand.Run(settings, output, error),
                "recurrence" => AnalyzeRecurrenceCommand.Run(settings, output, error),
                "growth" => AnalyzeGrowthCommand.Run(settings, output, error),
                _ => AnalyzeRateCommand.Run(settings, output, error),
            };
            Assert.Equal((0, ""), (code, error.ToString()));
            using var document = JsonDocument.Parse(output.ToString());
            return document.RootElement.Clone();
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static string Name(Condition condition) =>
        FindingReflection.Descriptor.FindTypeByName<Google.Protobuf.Reflection.EnumDescriptor>("Condition").FindValueByNumber((int)condition).Name;
}

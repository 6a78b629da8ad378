using System.Globalization;
using System.Text.Json;
using System.Xml.Linq;
using FleetTrend.Cli.BackTests;
using FleetTrend.Cli.Commands;
using FleetTrend.Cli.Csv;
using FleetTrend.IntegrationTests.Trends;
using FleetTrend.Results.Observing;
using FleetTrend.Statistics.Monitoring;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Parameters;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.CommandLine;

/// <summary>fleettrend backtest on a database with a planted change: tables, files and JSON say when it would have been called.</summary>
[Collection(SharedPostgres.Name)]
public sealed class BackTestTests(PostgresFixture postgres) : IAsyncLifetime, IDisposable
{
    private readonly CsvFolder folder = new();
    private ApiServer server = null!;
    private string bad = "";

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        bad = await PlantedChange.PushAsync(server);
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_planted_change_is_called_in_the_expected_weeks_and_JSON_CSV_and_plot_say_the_same()
    {
        var (csv, plot) = (folder.PathTo("calls.csv"), folder.PathTo("calls.svg"));
        var (code, output, error) = await RunAsync(new BackTestSettings { Json = true, Csv = csv, Plot = plot });

        Assert.Equal((0, ""), (code, error));
        var document = JsonDocument.Parse(output).RootElement;
        Assert.StartsWith("Nobody's history tells which calls were right.", document.GetProperty("whatItCannotTell").GetString());
        var group = Assert.Single(document.GetProperty("typeGroups").EnumerateArray());
        Assert.Equal("welded", group.GetProperty("typeGroup").GetString());
        Assert.Equal(6 * 700 / 365.25, group.GetProperty("aircraftYears").GetDouble(), 6);
        Assert.Equal(
            ["watch", "flag", .. AlertPractice.All.Select(p => p.Name)], group.GetProperty("methods").EnumerateArray().Select(m => m.GetProperty("name").GetString()));
        var calls = group.GetProperty("calls").EnumerateArray().ToList();
        foreach (var tier in new[] { "watch", "flag" })
        {
            var call = Assert.Single(calls, c => Text(c, "method") == tier && Text(c, "registration") == bad);
            var day = DateOnly.Parse(Text(call, "date"), CultureInfo.InvariantCulture);
            Assert.InRange(day.DayNumber - PlantedChange.Start.DayNumber, 574, 660); // from the first of its new cracks to a quarter of a year later
            Assert.Equal(0, (DateOnly.FromDateTime(DateTime.UtcNow).DayNumber - day.DayNumber) % 7); // weeks are counted back from today
            Assert.Equal(("crack", "test stand", "", JsonValueKind.Null), (Text(call, "condition"), Text(call, "base"), Text(call, "part"), call.GetProperty("endedDate").ValueKind));
            Assert.True(call.GetProperty("ratio").GetDouble() > 1);
        }

        Assert.Contains(calls, c => Text(c, "method") == "mean-2-sd" && c.GetProperty("levelPerThousandHours").GetDouble() < c.GetProperty("perThousandHours").GetDouble());
        var problems = new List<CsvProblem>();
        var lines = CsvFile.Read(csv, [.. BackTestRow.Columns], [], problems).ToList();
        Assert.Empty(problems);
        Assert.Equal(
            calls.Select(c => string.Join('|', Text(c, "method"), Text(c, "registration"), Text(c, "condition"), Text(c, "date"), Text(c, "endedDate"), Text(c, "sinceDate"))),
            lines.Select(l => string.Join('|', Cell(l, "method"), Cell(l, "registration"), Cell(l, "condition"), Cell(l, "date"), Cell(l, "ended_date"), Cell(l, "since_date"))));
        Assert.Equal("svg", XDocument.Load(plot).Root!.Name.LocalName);
    }

    [Fact]
    public async Task Tables_name_every_method_with_its_source_and_the_days_asked_for()
    {
        var (code, output, error) = await RunAsync(new BackTestSettings { TypeGroup = "welded" });
        Assert.Equal((0, ""), (code, error));
        Assert.Contains(bad, output, StringComparison.Ordinal);
        Assert.Contains("whole aircraft", output, StringComparison.Ordinal);
        Assert.Contains("stands", output, StringComparison.Ordinal);
        Assert.Contains("per 50 aircraft-years", output, StringComparison.Ordinal);
        var text = string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)); // wrapped lines
        Assert.All(AlertPractice.All, p => Assert.Contains($"{p.Title}: {p.Description} Source: {p.Source}.", text, StringComparison.Ordinal));
        Assert.Contains("A call is right or false only by what was found when someone looked.", text, StringComparison.Ordinal);

        var early = (await RunAsync(new BackTestSettings { Until = $"{PlantedChange.Start.AddDays(560):yyyy-MM-dd}" })).Output;
        Assert.DoesNotContain("whole aircraft", early, StringComparison.Ordinal);
        Assert.Contains("no watch or flag would have come", early, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_makes_no_sense_is_refused_and_nothing_printed()
    {
        foreach (var (settings, rule, expected) in new[]
        {
            (new BackTestSettings { TypeGroup = "wielded" }, "--type-group: must be a type group with aircraft (welded); got \"wielded\"", 2),
            (new BackTestSettings { Since = "2999-01-01" }, "--since: must be no later than today", 2),
            (new BackTestSettings { Since = "3 Feb" }, "--since: must be a date such as 2026-02-03; got \"3 Feb\"", 2),
            (new BackTestSettings { Csv = folder.PathTo("none/calls.csv") }, "must be a file that can be written", 1),
        })
        {
            var (code, output, error) = await RunAsync(settings);
            Assert.Equal((expected, ""), (code, output));
            Assert.Contains(rule, error, StringComparison.Ordinal);
        }
    }

    private async Task<(int Code, string Output, string Error)> RunAsync(BackTestSettings settings)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var run = new BackTestRun(
            server.Services.GetRequiredService<Knowledge>(), server.Services.GetRequiredService<TypeGroupReader>(),
            server.Services.GetRequiredService<ParameterStore>(), output, error);
        var code = await run.RunAsync(settings, CancellationToken.None);
        return (code, output.ToString(), error.ToString());
    }

    private static string Text(JsonElement call, string name) => call.GetProperty(name).GetString() ?? "";

    private static string Cell(CsvLine line, string column) => line.Text(column);
}

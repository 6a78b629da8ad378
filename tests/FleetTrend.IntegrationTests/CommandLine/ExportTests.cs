using System.Text.Json;
using FleetTrend.Cli.Commands;
using FleetTrend.Client;
using FleetTrend.Contracts.V1;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Keys;
using FleetTrend.Store.Sources;
using FleetTrend.Synthetic;
using FleetTrend.Trends;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.CommandLine;

/// <summary>fleettrend export against the real API, and the way back into an empty database.</summary>
[Collection(SharedPostgres.Name)]
public sealed class ExportTests(PostgresFixture postgres) : IAsyncLifetime, IDisposable
{
    private readonly CsvFolder folder = new();
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Exported_and_imported_into_an_empty_database_a_fleet_gives_the_same_statistics()
    {
        var key = await KeyAsync(server);
        var (stored, superseded) = await PushFleetAsync(key);

        var (code, summary, error) = await ExportAsync(server, key);
        Assert.Equal((0, ""), (code, error));
        string[] besides = ["looks.csv", "changed_locations.csv", "assignments.csv", "layouts.csv", "locations.csv", "type_groups.csv", "sources.csv"];
        Assert.Equal(stored, Rows(summary).Where(f => !besides.Contains(f.File, StringComparer.Ordinal)).Sum(f => f.Rows));

        await using var empty = await ApiServer.StartAsync(postgres);
        var (imported, counts, _) = await ImportRunner.ImportAsync(empty, folder.Path, new Given(await KeyAsync(empty)));
        Assert.Equal(0, imported);
        Assert.Equal(stored, counts.GetProperty("files").EnumerateArray().Sum(f => f.GetProperty("accepted").GetInt32()) - 2); // and two type groups
        Assert.True(superseded > 0);

        var asOf = await empty.Services.GetRequiredService<Knowledge>().FixAsOfAsync(default);
        var before = await TrendsAsync(server, asOf);
        Assert.Equal(before, await TrendsAsync(empty, asOf));
        Assert.True(before.Length > 100_000, "trends of 30 aircraft");
        Assert.Equal(2, (await ExportAsync(empty, key)).Code); // an export writes over nothing
    }

    [Fact]
    public async Task An_export_as_of_a_moment_holds_what_was_known_then()
    {
        using var example = CsvFolder.Example();
        File.Delete(example.PathTo("retractions.csv"));
        Assert.Equal(0, (await ImportRunner.ImportAsync(server, example.Path, new Given(server.Key))).Code);
        var moment = await server.Services.GetRequiredService<Knowledge>().FixAsOfAsync(default);
        example.Write("retractions.csv", "source_record_id,revision,reason", "card 16/2,2,entered twice");
        Assert.Equal(0, (await ImportRunner.ImportAsync(server, example.Path, new Given(server.Key))).Code);

        var (_, then, _) = await ExportAsync(server, server.Key, moment);
        Assert.Equal(2, Rows(then).Single(f => f.File == "actions.csv").Rows);
        Directory.Delete(folder.Path, recursive: true);
        var (_, now, _) = await ExportAsync(server, server.Key);
        Assert.Equal(1, Rows(now).Single(f => f.File == "actions.csv").Rows);
    }

    private static async Task<string> KeyAsync(ApiServer server)
    {
        await server.Services.GetRequiredService<SourceStore>().AddAsync(SyntheticSchool.SourceName, "Synthetic", default);
        return await server.CreateKeyAsync(SyntheticSchool.SourceName, Enum.GetValues<KeyScope>());
    }

    /// <summary>A synthetic fleet, some findings corrected and one taken back; the records that are left, and revisions that are not.</summary>
    private async Task<(int Stored, int Superseded)> PushFleetAsync(string key)
    {
        using var channel = FleetTrendChannel.Open(new ConnectionOptions { Address = server.GrpcAddress, Key = key });
        var layouts = new LayoutService.LayoutServiceClient(channel);
        var fleet = SyntheticSchool.Generate(4, new DateOnly(2026, 3, 31), (await layouts.ListLayoutsAsync(new ListLayoutsRequest { PageSize = 500 })).Layouts);
        foreach (var group in fleet.TypeGroups)
            await layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest { TypeGroup = group });
        var findings = fleet.Records.Where(r => r.Finding is not null).Take(6).Select(r => r.Clone()).ToList();
        findings.ForEach(r => r.Key.Revision = 2);
        findings.ForEach(r => r.Finding.Note = "corrected, with \"quotes\", a comma");
        findings[0].Retraction = new Retraction { Reason = "entered twice" };
        await foreach (var pushed in new RecordPusher(channel).PushAsync(fleet.Records.Concat(findings).ToAsyncEnumerable()))
            Assert.True(pushed.Outcome.State == RecordState.Accepted, pushed.Outcome.Error?.Message);
        return (fleet.Records.Count - 1, findings.Count);
    }

    private static async Task<string> TrendsAsync(ApiServer server, DateTimeOffset asOf) => JsonSerializer.Serialize(
        await ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services).ComputeAsync(asOf, new TrendParameters(), "test", default), TrendJson.Options);

    private static IEnumerable<(string File, int Rows)> Rows(JsonElement summary) =>
        summary.GetProperty("files").EnumerateArray().Select(f => (f.GetProperty("file").GetString()!, f.GetProperty("rows").GetInt32()));

    private async Task<(int Code, JsonElement Summary, string Error)> ExportAsync(ApiServer server, string key, DateTimeOffset? asOf = null)
    {
        var keyFile = Path.GetTempFileName();
        try
        {
            await File.WriteAllTextAsync(keyFile, key);
            using var output = new StringWriter();
            using var error = new StringWriter();
            var settings = new ExportCommand.Settings
            {
                Folder = folder.Path,
                Server = server.GrpcAddress.ToString(),
                KeyFile = keyFile,
                AsOf = asOf?.ToString("O"),
                Json = true,
            };
            var code = await ExportCommand.RunAsync(settings, output, error, CancellationToken.None);
            return (code, output.ToString().Length > 0 ? JsonDocument.Parse(output.ToString()).RootElement : default, error.ToString());
        }
        finally
        {
            File.Delete(keyFile);
        }
    }
}

using System.Text.Json;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Observations;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store.Histories;
using FleetTrend.Synthetic;
using FleetTrend.Trends;
using Google.Protobuf;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>What a refresh keeps saves work and changes no number, and a type group in which nothing changed keeps its results.</summary>
[Collection(SharedPostgres.Name)]
public sealed class KeptObservationsTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const int Parts = 8;
    private readonly Dictionary<string, IntakeService.IntakeServiceClient> clients = [];
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    // The history has revisions, retractions, codes that come late, parts with serial numbers and an aircraft that changes its group. What is compared
    // with is computed from all records at once, by a way that keeps nothing.
    [Fact]
    public async Task Refreshes_while_a_history_comes_in_say_what_the_whole_history_says_at_each_of_their_moments()
    {
        var layouts = (await server.Layouts.ListLayoutsAsync(new ListLayoutsRequest())).Layouts;
        var history = new TwistedHistory(SyntheticSchool.Generate(seed: 3, new DateOnly(2025, 6, 30), layouts), seed: 17);
        foreach (var (name, layout) in new[]
        {
            ("synthetic-trainer-four", SyntheticSchool.FourCylinderLayout), ("synthetic-tourer-six", SyntheticSchool.SixCylinderLayout),
        })
        {
            await server.Layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest { TypeGroup = new TypeGroup { Name = name, Layout = layout } });
        }

        foreach (var source in new[] { TwistedHistory.ShopSource, TwistedHistory.LogSource })
            clients.Add(source, await server.IntakeOfAsync(source));
        var steps = history.Steps.ToArray();
        new Random(5).Shuffle(steps);
        foreach (var part in steps.Chunk((steps.Length / Parts) + 1))
        {
            await PushAsync(part);
            var refreshed = await server.Services.RefreshAsync();
            var fleet = await server.Services.GetRequiredService<HistoryReader>().ReadAsync(refreshed.AsOf, default);
            var whole = FleetTrends.Compute(Observe.Fleet(fleet), refreshed.Parameters, refreshed.CodeVersion);
            Assert.Equal(JsonSerializer.Serialize(whole, TrendJson.Options), JsonSerializer.Serialize(refreshed, TrendJson.Options));
        }

        Assert.NotEqual(0, await server.CountAsync("observed_aircraft where content is not null"));
    }

    [Fact]
    public async Task One_record_observes_one_aircraft_anew_and_the_other_group_keeps_its_set()
    {
        var (one, other) = (new UnitFleet("one", "gasket", "ZZ", hoursPerDay: 5), new UnitFleet("other", "gasket", "ZY", hoursPerDay: 5));
        var (a, b, c) = (one.Unit(), one.Unit(), other.Unit());
        foreach (var (fleet, unit) in new[] { (one, a), (one, b), (other, c) })
            fleet.Looked(unit, 100);
        await one.PushAsync(server);
        await other.PushAsync(server);
        var refresh = server.Services.GetRequiredService<TrendRefresh>();
        DateTimeOffset first, second;
        Dictionary<string, long> before;
        var hours = 100;
        do // on another day all of them are computed anew: two refreshes of one day are compared
        {
            first = await refresh.RunAsync(default);
            before = await SetsAsync(first);
            one.Looked(a, hours += 100);
            await (await server.IntakeOfAsync("published")).PushRecordAsync(new PushRecordRequest { Record = one.Records[^1] });
            second = await refresh.RunAsync(default);
        }
        while (first.UtcDateTime.Date != second.UtcDateTime.Date);

        var after = await SetsAsync(second);
        Assert.NotEqual(before["one"], after["one"]);
        Assert.Equal(before["other"], after["other"]);
        Assert.Equal(1, await server.CountAsync($"observed_aircraft where as_of = '{second:O}'"));
        Assert.Equal(2, await server.CountAsync($"observed_aircraft where as_of < '{second:O}'"));
    }

    // The newest revision counts, whatever it is about: the aircraft that had the older one is observed anew too.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_record_that_a_revision_takes_to_another_aircraft_or_to_none_leaves_the_first(bool toNone)
    {
        var fleet = new UnitFleet("one", "gasket", "ZZ", hoursPerDay: 5);
        var (a, b) = (fleet.Unit(), fleet.Unit());
        fleet.Looked(a, 100);
        fleet.Looked(b, 100);
        fleet.Looked(a, 200);
        await fleet.PushAsync(server);
        await server.Services.RefreshAsync();
        var moved = fleet.Records[^1].Clone();
        moved.Key.Revision = 2;
        if (toNone)
            moved.PracticeChange = new PracticeChange { ChangeDate = moved.Inspection.InspectionDate, What = "a mirror for every look" };
        else
            moved.Inspection.Registration = b;

        var pushed = await (await server.IntakeOfAsync("published")).PushRecordAsync(new PushRecordRequest { Record = moved });

        Assert.Equal(RecordState.Accepted, pushed.Outcome.State);
        var refreshed = await server.Services.RefreshAsync();
        var whole = FleetTrends.Compute(
            Observe.Fleet(await server.Services.GetRequiredService<HistoryReader>().ReadAsync(refreshed.AsOf, default)),
            refreshed.Parameters, refreshed.CodeVersion);
        Assert.Equal(JsonSerializer.Serialize(whole, TrendJson.Options), JsonSerializer.Serialize(refreshed, TrendJson.Options));
    }

    private async Task<Dictionary<string, long>> SetsAsync(DateTimeOffset asOf)
    {
        await using var command = server.Database.DataSource.CreateCommand(
            "select type_group, id from result_sets where id = any((select set_ids from trends where as_of = $1)::bigint[])");
        command.Parameters.Add(new Npgsql.NpgsqlParameter { Value = asOf.UtcDateTime });
        var sets = new Dictionary<string, long>(StringComparer.Ordinal);
        await using var reader = await command.ExecuteReaderAsync();
        while (await reader.ReadAsync())
            sets.Add(reader.GetString(0), reader.GetInt64(1));
        return sets;
    }

    private async Task PushAsync(IReadOnlyList<IMessage> steps)
    {
        var codes = new CodeService.CodeServiceClient(server.Channel);
        foreach (var code in steps.OfType<SourceCode>())
            await codes.SetCodeAsync(new SetCodeRequest { Code = code });
        foreach (var source in steps.OfType<Record>().GroupBy(r => r.Key.Source))
        {
            foreach (var batch in source.Chunk(500))
                await clients[source.Key].PushRecordsAsync(new PushRecordsRequest { Records = { batch }, HoldUnregistered = true });
        }
    }
}

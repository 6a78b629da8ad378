using FleetTrend.Records;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;
using FleetTrend.Store;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Layouts;
using FleetTrend.Store.Sources;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace FleetTrend.IntegrationTests.Store;

/// <summary>A migrated database with one source, one type group and nothing else; its data are invented.</summary>
public sealed class StoreFixture : IAsyncDisposable
{
    public const string Source = "shop-cards";
    public const string TypeGroup = "invented-four";
    public const string Weld = "exhaust/cyl-3/flange-weld";
    public const string Gasket = "exhaust/cyl-3/gasket";

    private readonly TestDatabase testDatabase;
    private readonly List<ServiceProvider> processes = [];

    private StoreFixture(TestDatabase database) => testDatabase = database;

    public static async Task<StoreFixture> CreateAsync(PostgresFixture postgres)
    {
        var database = await postgres.CreateDatabaseAsync("store", async connectionString =>
        {
            await using var services = new ServiceCollection().AddFleetTrendStore(connectionString).BuildServiceProvider();
            await StoreSchema.MigrateAsync(services, default);
            await services.GetRequiredService<SourceStore>().AddAsync(Source, "Shop cards", default);
            var layout = ShippedLayouts.All[0].Name;
            await services.GetRequiredService<LayoutStore>().AddTypeGroupAsync(new TypeGroup(TypeGroup, "Invented", layout), default);
        });
        return new StoreFixture(database);
    }

    /// <summary>Everything that a process of its own would have: nothing is shared but the database.</summary>
    public IServiceProvider StartProcess()
    {
        var process = new ServiceCollection().AddFleetTrendStore(testDatabase.ConnectionString).BuildServiceProvider();
        processes.Add(process);
        return process;
    }

    public NpgsqlDataSource DataSource => testDatabase.DataSource;

    public async Task<T> ScalarAsync<T>(string statement)
    {
        await using var command = DataSource.CreateCommand(statement);
        return (T)(await command.ExecuteScalarAsync())!;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var process in processes)
            await process.DisposeAsync();
        await testDatabase.DisposeAsync();
    }

    public static NewRecord.ToStore Aircraft(string registration, string? id = null, int revision = 1) =>
        Record(id ?? $"aircraft-{registration}", revision, new Airframe
        {
            Registration = registration,
            WatchStartDate = new DateOnly(2024, 1, 1),
            Assignments = [new Assignment(new DateOnly(2024, 1, 1), "Invented Field", TypeGroup)],
        });

    public static NewRecord.ToStore Crack(string id, string registration, double hours = 812.4, int revision = 1, string location = Weld) =>
        Record(id, revision, new Finding
        {
            Registration = registration,
            Location = location,
            FoundDate = new DateOnly(2025, 3, 4),
            TimeInService = Hours.From(hours),
            Condition = Condition.Crack,
            SizeMillimetres = 6.5,
            Method = LookMethod.DyePenetrant,
        });

    public static NewRecord.ToStore Retraction(string id, int revision) => Record(id, revision, new Retraction("entered twice"));

    /// <summary>The hash only has to tell contents apart; intake has its own.</summary>
    public static NewRecord.ToStore Record(string id, int revision, RecordContent content, string source = Source) =>
        new(new RecordKey(source, id, revision), content, System.Security.Cryptography.SHA256.HashData(
            System.Text.Encoding.UTF8.GetBytes(content.ToString())));
}

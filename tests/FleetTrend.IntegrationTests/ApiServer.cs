using FleetTrend.Api;
using FleetTrend.Contracts.V1;
using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Store;
using Grpc.Net.Client;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;

namespace FleetTrend.IntegrationTests;

/// <summary>The real API on a database of its own, listening on free ports. Disposal fails a test whose server logged an
/// error that the test has not said to expect.</summary>
public sealed class ApiServer : IAsyncDisposable
{
    private readonly TestDatabase _database;
    private readonly HostDatabase _hostDatabase;
    private readonly ErrorLog _errors = new();
    private readonly WebApplication _app;
    private readonly GrpcChannel _channel;

    private ApiServer(TestDatabase database, HostDatabase hostDatabase, HostSettings settings)
    {
        _database = database;
        _hostDatabase = hostDatabase;
        _app = ApiHost.Build([], settings, hostDatabase, builder =>
        {
            builder.Logging.ClearProviders();
            builder.Logging.AddProvider(_errors);
        });
        _app.StartAsync().GetAwaiter().GetResult();
        var addresses = _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.ToList();
        GrpcAddress = new Uri(addresses[0]);
        _channel = GrpcChannel.ForAddress(GrpcAddress);
        Http = new HttpClient { BaseAddress = new Uri(addresses[1]) };
    }

    public Uri GrpcAddress { get; }

    /// <summary>For JSON, health and pages.</summary>
    public HttpClient Http { get; }

    public GrpcChannel Channel => _channel;

    public IServiceProvider Services => _app.Services;

    public TestDatabase Database => _database;

    public IntakeService.IntakeServiceClient Intake => new(_channel);

    public LayoutService.LayoutServiceClient Layouts => new(_channel);

    public SourceService.SourceServiceClient Sources => new(_channel);

    public TrendService.TrendServiceClient Trends => new(_channel);

    public FlagService.FlagServiceClient Flags => new(_channel);

    public ReportService.ReportServiceClient Reports => new(_channel);

    /// <summary>Errors that this test provokes on purpose.</summary>
    public bool ErrorsExpected { get; set; }

    public static async Task<ApiServer> StartAsync(PostgresFixture postgres)
    {
        var database = await postgres.CreateDatabaseAsync("fleettrend schema", MigrateAsync);
        var settings = new HostSettings
        {
            Database = database.ConnectionString,
            GrpcAddress = NetworkAddress.Loopback(0),
            HttpAddress = NetworkAddress.Loopback(0),
        };
        return new ApiServer(database, await HostDatabase.OpenAsync(settings, NullLoggerFactory.Instance, default), settings);
    }

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        _channel.Dispose();
        await _app.StopAsync();
        await _app.DisposeAsync();
        await _hostDatabase.DisposeAsync();
        await _database.DisposeAsync();
        if (!ErrorsExpected)
            Assert.Empty(_errors.Messages);
    }

    private static async Task MigrateAsync(string connectionString)
    {
        await using var services = new ServiceCollection().AddFleetTrendStore(connectionString).BuildServiceProvider();
        await StoreSchema.MigrateAsync(services, default);
    }
}

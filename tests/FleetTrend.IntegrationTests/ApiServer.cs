using System.Security.Cryptography.X509Certificates;
using FleetTrend.Api;
using FleetTrend.Contracts.V1;
using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Store;
using FleetTrend.Store.Keys;
using FleetTrend.Store.Sources;
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
    private readonly bool _ownsDatabase;
    private readonly TestDatabase _database;
    private readonly HostDatabase _hostDatabase;
    private readonly ErrorLog _errors = new();
    private readonly WebApplication _app;
    private readonly X509Certificate2? _trust;
    private readonly GrpcChannel _channel;
    private readonly List<GrpcChannel> _channels = [];

    private ApiServer(
        TestDatabase database, HostDatabase hostDatabase, HostSettings settings, Action<WebApplicationBuilder>? configure, X509Certificate2? trust,
        bool ownsDatabase = true)
    {
        _ownsDatabase = ownsDatabase;
        _database = database;
        _hostDatabase = hostDatabase;
        _trust = trust;
        _app = ApiHost.Build([], settings, hostDatabase, builder =>
        {
            builder.Logging.ClearProviders();
            builder.Logging.AddProvider(_errors);
            configure?.Invoke(builder);
        });
        _app.StartAsync().GetAwaiter().GetResult();
        var addresses = _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.ToList();
        GrpcAddress = new Uri(addresses[0]);
        HttpAddress = new Uri(addresses[settings.HasOnePort ? 0 : 1]);
        LocalAddress = settings.LocalAddress is null ? null : new Uri(addresses[^1]);
        Services.GetRequiredService<SourceStore>().AddAsync(ShopCards.Source, ShopCards.Title, default).GetAwaiter().GetResult();
        Key = CreateKeyAsync(ShopCards.Source, Enum.GetValues<KeyScope>()).GetAwaiter().GetResult();
        _channel = ChannelWith(Key);
        Http = HttpWith(Key);
    }

    public Uri GrpcAddress { get; }

    public Uri HttpAddress { get; }

    /// <summary>The address without TLS, where the settings have one.</summary>
    public Uri? LocalAddress { get; }

    /// <summary>A key of the source <see cref="ShopCards.Source"/> with every scope; the clients here send it.</summary>
    public string Key { get; }

    /// <summary>For JSON, health and pages.</summary>
    public HttpClient Http { get; }

    public GrpcChannel Channel => _channel;

    public WebApplication App => _app;

    public IServiceProvider Services => _app.Services;

    public TestDatabase Database => _database;

    public IntakeService.IntakeServiceClient Intake => new(_channel);

    public LayoutService.LayoutServiceClient Layouts => new(_channel);

    public SourceService.SourceServiceClient Sources => new(_channel);

    public TrendService.TrendServiceClient Trends => new(_channel);

    public ParameterService.ParameterServiceClient Parameters => new(_channel);

    public FlagService.FlagServiceClient Flags => new(_channel);

    public CheckService.CheckServiceClient Checks => new(_channel);

    public AccessService.AccessServiceClient Access => new(_channel);

    public ReportService.ReportServiceClient Reports => new(_channel);

    /// <summary>Errors that this test provokes on purpose.</summary>
    public bool ErrorsExpected { get; set; }

    /// <param name="postgres">The database server.</param>
    /// <param name="settings">Changes the settings of the test; as they come, limits are out of the way.</param>
    /// <param name="configure">Adds to the host: a log, for one.</param>
    /// <param name="trust">The certificate that the clients here trust, where the settings have TLS.</param>
    public static async Task<ApiServer> StartAsync(
        PostgresFixture postgres, Func<HostSettings, HostSettings>? settings = null, Action<WebApplicationBuilder>? configure = null,
        X509Certificate2? trust = null)
    {
        var database = await postgres.CreateDatabaseAsync("fleettrend schema", MigrateAsync);
        var ours = Settings(database);
        ours = settings?.Invoke(ours) ?? ours;
        return new ApiServer(database, await HostDatabase.OpenAsync(ours, NullLoggerFactory.Instance, default), ours, configure, trust);
    }

    /// <summary>Another process on the database of <paramref name="first"/>, which is disposed after it.</summary>
    public static async Task<ApiServer> StartBesideAsync(ApiServer first)
    {
        var settings = Settings(first._database);
        return new ApiServer(
            first._database, await HostDatabase.OpenAsync(settings, NullLoggerFactory.Instance, default), settings, configure: null, trust: null, ownsDatabase: false);
    }

    /// <summary>Rows of a table; conditions may follow its name.</summary>
    public async Task<long> CountAsync(string table)
    {
        await using var command = _database.DataSource.CreateCommand($"select count(*) from {table}");
        return (long)(await command.ExecuteScalarAsync())!;
    }

    /// <summary>The text of a new key.</summary>
    public async Task<string> CreateKeyAsync(string? source, params IReadOnlyCollection<KeyScope> scopes) =>
        (await Services.GetRequiredService<KeyStore>().AddAsync("of a test", source, scopes, default))!.Text;

    /// <summary>A client that pushes records of another source than <see cref="ShopCards.Source"/>, registered here where it is not yet.</summary>
    public async Task<IntakeService.IntakeServiceClient> IntakeOfAsync(string source)
    {
        await Services.GetRequiredService<SourceStore>().AddAsync(source, source, default);
        return new IntakeService.IntakeServiceClient(ChannelWith(await CreateKeyAsync(source, KeyScope.RecordsWrite)));
    }

    /// <summary>A channel that sends this key, or none; it is disposed with the server.</summary>
    public GrpcChannel ChannelWith(string? key)
    {
        var channel = GrpcChannel.ForAddress(GrpcAddress, new GrpcChannelOptions
        {
            HttpHandler = new KeySender(key, Handler()),
            DisposeHttpClient = true,
        });
        _channels.Add(channel);
        return channel;
    }

    /// <summary>A client of JSON and pages that sends this key, or none; the caller disposes it.</summary>
    public HttpClient HttpWith(string? key) => new(new KeySender(key, Handler())) { BaseAddress = HttpAddress };

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        _channels.ForEach(channel => channel.Dispose());
        await _app.StopAsync();
        await _app.DisposeAsync();
        await _hostDatabase.DisposeAsync();
        if (_ownsDatabase)
            await _database.DisposeAsync();
        if (!ErrorsExpected)
            Assert.Empty(_errors.Messages);
    }

    private static HostSettings Settings(TestDatabase database) => new()
    {
        Database = database.ConnectionString,
        GrpcAddress = NetworkAddress.Loopback(0),
        HttpAddress = NetworkAddress.Loopback(0),
        Access = new AccessSettings { CallsPerSecond = 1_000_000, CallsAtOnce = 10_000, RefusedCallsPerMinute = 1_000_000 },
    };

    private SocketsHttpHandler Handler()
    {
        var handler = new SocketsHttpHandler { EnableMultipleHttp2Connections = true, AllowAutoRedirect = false };
        if (_trust is not null)
        {
            handler.SslOptions.CertificateChainPolicy = new X509ChainPolicy
            {
                TrustMode = X509ChainTrustMode.CustomRootTrust,
                CustomTrustStore = { _trust },
                RevocationMode = X509RevocationMode.NoCheck,
            };
        }

        return handler;
    }

    private static async Task MigrateAsync(string connectionString)
    {
        await using var services = new ServiceCollection().AddFleetTrendStore(connectionString).BuildServiceProvider();
        await StoreSchema.MigrateAsync(services, default);
    }
}

using System.Security.Cryptography.X509Certificates;
using FleetTrend.Api;
using FleetTrend.Contracts.V1;
using FleetTrend.Hosting;
using FleetTrend.Hosting.Configuration;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Store;
using FleetTrend.Store.Keys;
using FleetTrend.Store.People;
using FleetTrend.Store.Sources;
using Grpc.Net.Client;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;

namespace FleetTrend.IntegrationTests;

/// <summary>The real API on a database of its own, listening on free ports. Disposal fails a test whose server logged an
/// error that the test has not said to expect.</summary>
public sealed class ApiServer : IAsyncDisposable
{
    /// <summary>The password of everybody whom <see cref="AddPersonAsync"/> adds.</summary>
    public const string Password = "four words of a test";

    private readonly bool ownsDatabase;
    private readonly TestDatabase testDatabase;
    private readonly HostDatabase hostDatabase;
    private readonly ErrorLog errors = new();
    private readonly WebApplication app;
    private readonly X509Certificate2? trust;
    private readonly GrpcChannel keyedChannel;
    private readonly List<GrpcChannel> channels = [];

    private ApiServer(
        TestDatabase database, HostDatabase hostDatabase, HostSettings settings, Action<WebApplicationBuilder>? configure, X509Certificate2? trust,
        bool ownsDatabase = true)
    {
        this.ownsDatabase = ownsDatabase;
        testDatabase = database;
        this.hostDatabase = hostDatabase;
        this.trust = trust;
        app = ApiHost.Build([], settings, hostDatabase, builder =>
        {
            builder.Logging.ClearProviders();
            builder.Logging.AddProvider(errors);
            configure?.Invoke(builder);
        });
        app.StartAsync().GetAwaiter().GetResult();
        var addresses = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.ToList();
        GrpcAddress = new Uri(addresses[0]);
        HttpAddress = new Uri(addresses[settings.HasOnePort ? 0 : 1]);
        LocalAddress = settings.LocalAddress is null ? null : new Uri(addresses[^1]);
        Services.GetRequiredService<SourceStore>().AddAsync(ShopCards.Source, ShopCards.Title, default).GetAwaiter().GetResult();
        Key = CreateKeyAsync(ShopCards.Source, Enum.GetValues<KeyScope>()).GetAwaiter().GetResult();
        keyedChannel = ChannelWith(Key);
        Http = new HttpClient(new PageVisitor(this, new KeySender(Key, Handler()))) { BaseAddress = HttpAddress };
    }

    public Uri GrpcAddress { get; }

    public Uri HttpAddress { get; }

    /// <summary>The address without TLS, where the settings have one.</summary>
    public Uri? LocalAddress { get; }

    /// <summary>A key of the source <see cref="ShopCards.Source"/> with every scope; the clients here send it.</summary>
    public string Key { get; }

    /// <summary>For JSON and health with <see cref="Key"/>, and for pages, to which it signs in as a director.</summary>
    public HttpClient Http { get; }

    public GrpcChannel Channel => keyedChannel;

    public WebApplication App => app;

    public IServiceProvider Services => app.Services;

    public TestDatabase Database => testDatabase;

    public IntakeService.IntakeServiceClient Intake => new(keyedChannel);

    public LayoutService.LayoutServiceClient Layouts => new(keyedChannel);

    public SourceService.SourceServiceClient Sources => new(keyedChannel);

    public TrendService.TrendServiceClient Trends => new(keyedChannel);

    public ParameterService.ParameterServiceClient Parameters => new(keyedChannel);

    public FlagService.FlagServiceClient Flags => new(keyedChannel);

    public CheckService.CheckServiceClient Checks => new(keyedChannel);

    public AccessService.AccessServiceClient Access => new(keyedChannel);

    public ReportService.ReportServiceClient Reports => new(keyedChannel);

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
    public static async Task<ApiServer> StartBesideAsync(ApiServer first, string? dataFolder = null)
    {
        var settings = Settings(first.testDatabase);
        settings = settings with { DataFolder = dataFolder ?? settings.DataFolder };
        return new ApiServer(
            first.testDatabase, await HostDatabase.OpenAsync(settings, NullLoggerFactory.Instance, default),
                settings, configure: null, trust: null, ownsDatabase: false);
    }

    /// <summary>Rows of a table; conditions may follow its name.</summary>
    public async Task<long> CountAsync(string table)
    {
        await using var command = testDatabase.DataSource.CreateCommand($"select count(*) from {table}");
        return (long)(await command.ExecuteScalarAsync())!;
    }

    /// <summary>The text of a new key.</summary>
    public async Task<string> CreateKeyAsync(string? source, params IReadOnlyCollection<KeyScope> scopes) =>
        (await Services.GetRequiredService<KeyStore>().AddAsync("of a test", source, scopes, default))!.Text;

    /// <summary>Adds somebody who signs in with <see cref="Password"/>.</summary>
    public async Task<Person> AddPersonAsync(string name, PersonRole role)
    {
        await using var scope = Services.CreateAsyncScope();
        var person = new Person { UserName = name, Email = $"{Guid.NewGuid():N}@shop.example", Role = role };
        Assert.True((await scope.ServiceProvider.GetRequiredService<UserManager<Person>>().CreateAsync(person, Password)).Succeeded);
        return person;
    }

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
        channels.Add(channel);
        return channel;
    }

    /// <summary>A client of JSON that sends this key, or none; the caller disposes it.</summary>
    public HttpClient HttpWith(string? key) => new(new KeySender(key, Handler())) { BaseAddress = HttpAddress };

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        channels.ForEach(channel => channel.Dispose());
        await app.StopAsync();
        await app.DisposeAsync();
        await hostDatabase.DisposeAsync();
        if (ownsDatabase)
            await testDatabase.DisposeAsync();
        if (!ErrorsExpected)
            Assert.True(errors.Messages.Count is 0, string.Join("\n", errors.Messages)); // whole: xunit shortens a collection
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
        if (trust is not null)
        {
            handler.SslOptions.CertificateChainPolicy = new X509ChainPolicy
            {
                TrustMode = X509ChainTrustMode.CustomRootTrust,
                CustomTrustStore = { trust },
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

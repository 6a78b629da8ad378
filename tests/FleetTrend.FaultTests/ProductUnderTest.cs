using System.Net.Http.Headers;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests;
using FleetTrend.Store;
using FleetTrend.Store.Keys;
using FleetTrend.Store.Sources;
using FleetTrend.Synthetic;
using Grpc.Core;
using Grpc.Net.Client;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.FaultTests;

/// <summary>API and worker on one database, each startable, killable and startable again at the same addresses.</summary>
internal sealed class ProductUnderTest : IAsyncDisposable
{
    private readonly TestDatabase database;
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("fleettrend-fault-");
    private readonly Dictionary<string, string> settings;
    private readonly List<ProductProcess> started = [];
    private readonly string pagesUrl;
    private readonly int workerPort = ProductProcess.FreePort();

    private ProductUnderTest(TestDatabase database)
    {
        this.database = database;
        int grpc = ProductProcess.FreePort(), pages = ProductProcess.FreePort();
        GrpcUrl = $"http://127.0.0.1:{grpc}";
        pagesUrl = $"http://127.0.0.1:{pages}";
        settings = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["FLEETTREND_DATABASE"] = database.ConnectionString,
            ["FLEETTREND_DATA"] = folder.FullName,
            ["FLEETTREND_GRPC_ADDRESS"] = $"127.0.0.1:{grpc}",
            ["FLEETTREND_HTTP_ADDRESS"] = $"127.0.0.1:{pages}",
            ["FLEETTREND_REFRESH_DELAY_SECONDS"] = "1",
        };
    }

    public string GrpcUrl { get; }

    /// <summary>Where pages and JSON answer.</summary>
    public string PagesUrl => pagesUrl;

    public TestDatabase Database => database;

    public IReadOnlyList<string> Mails => Directory.Exists(MailFolder) ? Directory.GetFiles(MailFolder, "*.eml") : [];

    private string MailFolder => Path.Combine(folder.FullName, "mail");

    public static async Task<ProductUnderTest> CreateAsync(PostgresFixture server) => new(await MigratedDatabase.CreateAsync(server));

    public Task<ProductProcess> StartApiAsync() => StartAsync("FleetTrend.Api", $"{pagesUrl}/health/ready");

    /// <summary>Starts a worker; the second of two listens at another port, and both work on one database.</summary>
    public Task<ProductProcess> StartWorkerAsync(bool secondOfTwo = false)
    {
        var port = secondOfTwo ? ProductProcess.FreePort() : workerPort;
        settings["FLEETTREND_WORKER_ADDRESS"] = $"127.0.0.1:{port}";
        return StartAsync("FleetTrend.Worker", $"http://127.0.0.1:{port}/health/ready");
    }

    /// <summary>A key of every scope for the synthetic fleet's source, registered where it is not yet; the API has been started.</summary>
    public async Task<string> CreateKeyAsync()
    {
        await using var store = new ServiceCollection().AddFleetTrendStore(database.ConnectionString).BuildServiceProvider();
        await store.GetRequiredService<SourceStore>().AddAsync(SyntheticSchool.SourceName, "Synthetic", default);
        var key = await store.GetRequiredService<KeyStore>().AddAsync("of a test", SyntheticSchool.SourceName, Enum.GetValues<KeyScope>(), default);
        return key!.Text;
    }

    /// <summary>A channel that sends such a key.</summary>
    public async Task<GrpcChannel> ChannelAsync()
    {
        var http = new HttpClient();
        http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", await CreateKeyAsync());
        return GrpcChannel.ForAddress(GrpcUrl, new GrpcChannelOptions { HttpClient = http, DisposeHttpClient = true });
    }

    /// <summary>Pushes a fleet and sets a recipient per scope; the number of scopes.</summary>
    public async Task<int> PushFleetAsync()
    {
        using var channel = await ChannelAsync();
        var layouts = new LayoutService.LayoutServiceClient(channel);
        var fleet = SyntheticSchool.Generate(6, new DateOnly(2026, 3, 31), (await layouts.ListLayoutsAsync(new ListLayoutsRequest { PageSize = 500 })).Layouts);
        foreach (var group in fleet.TypeGroups)
        {
            await layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest { TypeGroup = group });
        }

        using var call = new IntakeService.IntakeServiceClient(channel).StreamRecords();
        var answers = Task.Run(async () => await call.ResponseStream.ReadAllAsync().CountAsync(a => a.Outcome.State == RecordState.Accepted));
        foreach (var record in fleet.Records)
        {
            await call.RequestStream.WriteAsync(new StreamRecordsRequest { Record = record });
        }

        await call.RequestStream.CompleteAsync();
        Assert.Equal(fleet.Records.Count, await answers);
        var reports = new ReportService.ReportServiceClient(channel);
        var scopes = fleet.Bases.Append("*").ToList();
        foreach (var scope in scopes)
        {
            await reports.SetRecipientsAsync(new SetRecipientsRequest { Base = scope, Addresses = { "shop@synthetic.example" } });
        }

        return scopes.Count;
    }

    /// <summary>Every schedule is due now; the next tick of a worker makes its report.</summary>
    public async Task MakeReportsDueAsync()
    {
        await using var command = database.DataSource.CreateCommand("update report_schedules set next_due_time = clock_timestamp()");
        Assert.NotEqual(0, await command.ExecuteNonQueryAsync());
    }

    /// <summary>One number from the database.</summary>
    public async Task<long> CountAsync(string sql)
    {
        await using var command = database.DataSource.CreateCommand(sql);
        return Convert.ToInt64(await command.ExecuteScalarAsync());
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var process in started)
        {
            process.Dispose();
        }

        await database.DisposeAsync();
        folder.Delete(recursive: true);
    }

    private async Task<ProductProcess> StartAsync(string project, string readyUrl)
    {
        var process = await ProductProcess.StartAsync(project, readyUrl, settings);
        started.Add(process);
        return process;
    }
}

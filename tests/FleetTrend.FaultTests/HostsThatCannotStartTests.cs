using System.Net;
using System.Net.Sockets;
using FleetTrend.Hosting;
using FleetTrend.IntegrationTests;
using Npgsql;

namespace FleetTrend.FaultTests;

/// <summary>What an operator sees of a host that cannot start: the exit codes and sentences that deploy/README.md promises.</summary>
[Collection(SharedPostgres.Name)]
public sealed class HostsThatCannotStartTests(PostgresFixture server) : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("fleettrend-start-");

    public static TheoryData<string> Hosts => ["FleetTrend.Api", "FleetTrend.Worker"];

    [Theory]
    [MemberData(nameof(Hosts))]
    public async Task Settings_that_break_rules_are_told_in_words_all_at_once_and_without_secrets(string project)
    {
        var (code, output) = await ProductProcess.RunAsync(project, new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["FLEETTREND_DATABASE"] = "Host=db;Password=s3cret-of-the-db",
            ["FLEETTREND_HTTP_ADDRESS"] = "nowhere",
            ["FLEETTREND_SMTP_PASSWORD"] = "s3cret-of-the-mail",
        });

        Assert.Equal(HostExitCode.SettingsRefused, code);
        Assert.Contains("FLEETTREND_HTTP_ADDRESS = 'nowhere': must be host:port", output, StringComparison.Ordinal);
        Assert.Contains("FLEETTREND_DATABASE = '(hidden)': must name Host and Database", output, StringComparison.Ordinal);
        Assert.Contains("FLEETTREND_SMTP_PASSWORD = '(hidden)': must be given together with FLEETTREND_SMTP_USER", output, StringComparison.Ordinal);
        Assert.DoesNotContain("s3cret", output, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", output, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Hosts))]
    public async Task A_database_that_never_comes_ends_the_host_after_the_bound(string project)
    {
        var (code, output) = await ProductProcess.RunAsync(project, Settings(
            $"Host=127.0.0.1;Port={ProductProcess.FreePort()};Database=d;Username=u;Password=s3cret", waitSeconds: 1));

        Assert.Equal(HostExitCode.DatabaseNotReached, code);
        Assert.Contains("did not answer within 1 s (FLEETTREND_DATABASE_WAIT_SECONDS)", output, StringComparison.Ordinal);
        Assert.DoesNotContain("s3cret", output, StringComparison.Ordinal);
        Assert.DoesNotContain("Unhandled", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_database_that_refuses_ends_the_host_at_once()
    {
        await using var database = await server.CreateDatabaseAsync();
        var elsewhere = new NpgsqlConnectionStringBuilder(database.ConnectionString) { Database = "not-there" }.ConnectionString;

        var (code, output) = await ProductProcess.RunAsync("FleetTrend.Worker", Settings(elsewhere, waitSeconds: 86_400));

        Assert.Equal(HostExitCode.DatabaseNotReached, code);
        Assert.Contains("refuses: database \"not-there\" does not exist (3D000). Check user, password and database in FLEETTREND_DATABASE.", output, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Hosts))]
    public async Task A_host_waits_for_a_database_that_comes_late_and_its_health_says_so(string project)
    {
        await using var database = await server.CreateDatabaseAsync();
        var there = new NpgsqlConnectionStringBuilder(database.ConnectionString);
        var port = ProductProcess.FreePort();
        var late = new NpgsqlConnectionStringBuilder(database.ConnectionString) { Host = "127.0.0.1", Port = port }.ConnectionString;
        var settings = Settings(late, waitSeconds: 86_400);
        var url = $"http://{settings[project == "FleetTrend.Api" ? "FLEETTREND_HTTP_ADDRESS" : "FLEETTREND_WORKER_ADDRESS"]}";

        using var host = await ProductProcess.StartAsync(project, $"{url}/health/live", settings);
        using var http = new HttpClient();
        Assert.Equal(HttpStatusCode.ServiceUnavailable, await AskAsync(http, $"{url}/health/ready"));
        Assert.Equal(HttpStatusCode.ServiceUnavailable, await AskAsync(http, $"{url}/v1/layouts"));
        Assert.Contains($"Waiting for the database at 127.0.0.1:{port}", host.Output, StringComparison.Ordinal);

        await using var forward = new PortForward(port, there.Host!, there.Port);
        await Eventually.TrueAsync(async () => await AskAsync(http, $"{url}/health/ready") == HttpStatusCode.OK, Patience, () => host.Output);
        Assert.Contains($"Reached the database at 127.0.0.1:{port} after", host.Output, StringComparison.Ordinal);
        host.Kill();
    }

    [Fact]
    public async Task An_address_in_use_is_named()
    {
        await using var database = await server.CreateDatabaseAsync();
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        var settings = Settings(database.ConnectionString, waitSeconds: 0);
        settings["FLEETTREND_WORKER_ADDRESS"] = taken.LocalEndpoint.ToString()!;

        var (code, output) = await ProductProcess.RunAsync("FleetTrend.Worker", settings);

        Assert.Equal(HostExitCode.SettingsRefused, code);
        Assert.Contains(taken.LocalEndpoint.ToString()!, output, StringComparison.Ordinal);
        Assert.Contains("FLEETTREND_WORKER_ADDRESS of the worker", output, StringComparison.Ordinal);
    }

    public void Dispose() => folder.Delete(recursive: true);

    private Dictionary<string, string> Settings(string database, int waitSeconds) => new(StringComparer.Ordinal)
    {
        ["FLEETTREND_DATABASE"] = database,
        ["FLEETTREND_DATABASE_WAIT_SECONDS"] = $"{waitSeconds}",
        ["FLEETTREND_GRPC_ADDRESS"] = $"127.0.0.1:{ProductProcess.FreePort()}",
        ["FLEETTREND_HTTP_ADDRESS"] = $"127.0.0.1:{ProductProcess.FreePort()}",
        ["FLEETTREND_WORKER_ADDRESS"] = $"127.0.0.1:{ProductProcess.FreePort()}",
        ["FLEETTREND_DATA"] = folder.FullName,
    };

    private static async Task<HttpStatusCode?> AskAsync(HttpClient http, string url)
    {
        try
        {
            using var answer = await http.GetAsync(new Uri(url));
            return answer.StatusCode;
        }
        catch (HttpRequestException)
        {
            return null; // between the waiting host and the one that starts
        }
    }
}

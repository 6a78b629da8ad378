using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using FleetTrend.Hosting.LocalPostgres;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace FleetTrend.Hosting.Tests.LocalPostgres;

/// <summary>What is expected of the server itself (fsync, SCRAM, data checksums, fast stop) is PostgreSQL's own word
/// for it, asked with SHOW and read from its files. Source: PostgreSQL documentation, chapters 19 and 20.</summary>
public sealed class LocalPostgresServerTests : IDisposable
{
    private readonly DataFolder data = new();

    public void Dispose() => data.Dispose();

    [Fact]
    public async Task The_first_start_makes_a_durable_UTF8_database_owned_by_a_role_that_is_no_superuser()
    {
        await using var server = await StartAsync();

        Assert.Equal("on", await AskAsync(server.ConnectionString, "SHOW fsync"));
        Assert.Equal("on", await AskAsync(server.ConnectionString, "SHOW synchronous_commit"));
        Assert.Equal("on", await AskAsync(server.ConnectionString, "SHOW data_checksums"));
        Assert.Equal("UTF8", await AskAsync(server.ConnectionString, "SHOW server_encoding"));
        Assert.Equal("UTC", await AskAsync(server.ConnectionString, "SHOW timezone"));
        Assert.Equal("fleettrend", await AskAsync(server.ConnectionString, "SELECT current_database()"));
        Assert.Equal("off", await AskAsync(server.ConnectionString, "SHOW is_superuser"));
    }

    [Fact]
    public async Task It_listens_on_the_loopback_address_only_and_has_no_socket_file()
    {
        await using var server = await StartAsync();

        Assert.Equal("127.0.0.1", await AskAsync(server.ConnectionString, "SHOW listen_addresses"));
        // Source: PostgreSQL documentation, unix_socket_directories: a socket is named .s.PGSQL.<port>.
        Assert.DoesNotContain(
            $".s.PGSQL.{server.Port}", await File.ReadAllTextAsync("/proc/net/unix"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_password_is_refused()
    {
        await using var server = await StartAsync();
        var wrong = new NpgsqlConnectionStringBuilder(server.ConnectionString) { Password = "wrong", Pooling = false };

        var refusal = await Assert.ThrowsAsync<PostgresException>(
            () => AskAsync(wrong.ConnectionString, "SELECT 1"));

        // Source: PostgreSQL documentation, appendix A: 28P01 is invalid_password.
        Assert.Equal("28P01", refusal.SqlState);
    }

    [Fact]
    public async Task The_password_file_is_closed_to_others()
    {
        await using var server = await StartAsync();

        var files = Directory.GetFiles(data.Path, "password", SearchOption.AllDirectories);

        Assert.Equal(
            UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Assert.Single(files)));
    }

    [Fact]
    public async Task The_server_does_not_run_as_root()
    {
        await using var server = await StartAsync();

        // Source: proc(5): the second number of "Uid:" is the effective user id.
        var line = File.ReadLines($"/proc/{server.ProcessId}/status")
            .Single(l => l.StartsWith("Uid:", StringComparison.Ordinal));
        Assert.NotEqual(0, int.Parse(line.Split('\t')[2], CultureInfo.InvariantCulture));
    }

    [Fact]
    public async Task A_clean_stop_ends_the_server_and_the_data_is_there_after_the_next_start()
    {
        int first;
        await using (var server = await StartAsync())
        {
            first = server.ProcessId;
            await AskAsync(server.ConnectionString, "CREATE TABLE kept AS SELECT 812.4 AS hours");
        }
        Assert.False(IsAlive(first));

        await using var again = await StartAsync();

        Assert.Equal("812.4", await AskAsync(again.ConnectionString, "SELECT hours::text FROM kept"));
    }

    [Fact]
    public async Task After_kill_9_of_the_product_the_next_start_takes_over_the_server_that_still_runs()
    {
        using var product = await ProductProcess.StartAsync(data.Path);
        await AskAsync(product.ConnectionString, "CREATE TABLE kept AS SELECT 1 AS n");
        await product.KillAsync();
        Assert.True(IsAlive(product.ServerProcessId));

        int serverProcess;
        await using (var next = await StartAsync())
        {
            serverProcess = next.ProcessId;
            Assert.Equal(product.ServerProcessId, serverProcess);
            Assert.Equal("1", await AskAsync(next.ConnectionString, "SELECT n::text FROM kept"));
        }
        Assert.False(IsAlive(serverProcess));
    }

    [Fact]
    public async Task After_kill_9_of_product_and_server_the_next_start_recovers_what_was_committed()
    {
        using var product = await ProductProcess.StartAsync(data.Path);
        await AskAsync(product.ConnectionString, "CREATE TABLE kept AS SELECT 1 AS n");
        await product.KillAsync();
        await KillServerAsync(product.ServerProcessId);

        await using var next = await StartAsync();

        Assert.NotEqual(product.ServerProcessId, next.ProcessId);
        Assert.Equal("1", await AskAsync(next.ConnectionString, "SELECT n::text FROM kept"));
    }

    [Fact]
    public async Task A_stale_pid_file_that_names_another_live_process_does_not_stop_the_start()
    {
        await using (await StartAsync()) { }
        var cluster = Directory.GetFiles(data.Path, "PG_VERSION", SearchOption.AllDirectories)
            .Select(f => Path.GetDirectoryName(f)!).MinBy(f => f.Length)!;
        await File.WriteAllLinesAsync(
            Path.Combine(cluster, "postmaster.pid"),
            [$"{Environment.ProcessId}", cluster, "1700000000", "5432", "", "127.0.0.1", "       0         0", "ready   "]);

        await using var server = await StartAsync();

        Assert.NotEqual(Environment.ProcessId, server.ProcessId);
        Assert.Equal("1", await AskAsync(server.ConnectionString, "SELECT 1::text"));
    }

    [Fact]
    public async Task Two_processes_share_the_server_of_one_folder_and_the_last_one_stops_it()
    {
        using var product = await ProductProcess.StartAsync(data.Path);
        var second = await StartAsync();
        Assert.Equal(product.ServerProcessId, second.ProcessId);

        await product.EndAsync();
        Assert.True(IsAlive(second.ProcessId));
        Assert.Equal("1", await AskAsync(second.ConnectionString, "SELECT 1::text"));

        await second.DisposeAsync();
        Assert.False(IsAlive(second.ProcessId));
    }

    [Fact]
    public async Task Two_processes_that_start_at_once_make_one_cluster()
    {
        var products = await Task.WhenAll(ProductProcess.StartAsync(data.Path), ProductProcess.StartAsync(data.Path));

        Assert.Equal(products[0].ServerProcessId, products[1].ServerProcessId);

        await Task.WhenAll(products.Select(p => p.EndAsync()));
        Assert.False(IsAlive(products[0].ServerProcessId));
        foreach (var product in products)
            product.Dispose();
    }

    [Fact]
    public async Task A_port_taken_by_another_program_meanwhile_does_not_stop_the_next_start()
    {
        int port;
        await using (var server = await StartAsync())
            port = server.Port;
        using var squatter = new TcpListener(IPAddress.Loopback, port);
        squatter.Start();

        await using var again = await StartAsync();

        Assert.NotEqual(port, again.Port);
        Assert.Equal("1", await AskAsync(again.ConnectionString, "SELECT 1::text"));
    }

    [Fact]
    public async Task A_first_start_that_was_killed_half_way_is_made_again()
    {
        var leftover = Directory.CreateDirectory(Path.Combine(data.Path, "postgres", "cluster.new"));
        await File.WriteAllTextAsync(Path.Combine(leftover.FullName, "PG_VERSION"), "half");
        File.SetUnixFileMode(Path.Combine(data.Path, "postgres"), (UnixFileMode)0b111_101_101);

        await using var server = await StartAsync();

        Assert.Equal("1", await AskAsync(server.ConnectionString, "SELECT 1::text"));
    }

    [Fact]
    public async Task A_data_folder_below_a_folder_that_is_closed_to_others_works_and_the_parent_stays_closed()
    {
        var closed = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
        File.SetUnixFileMode(data.Path, closed);
        var options = new LocalPostgresOptions { DataFolder = Path.Combine(data.Path, "data") };

        var server = await LocalPostgresServer.StartAsync(options, NullLogger.Instance, CancellationToken.None);
        try
        {
            Assert.Equal("1", await AskAsync(server.ConnectionString, "SELECT 1::text"));
            Assert.Equal(closed, File.GetUnixFileMode(data.Path));
        }
        finally
        {
            await server.DisposeAsync();
            Directory.Delete(server.Folder, recursive: true); // root keeps it outside the data folder
        }
    }

    [Fact]
    public async Task Without_server_programs_the_error_says_what_to_install()
    {
        var empty = new LocalPostgresOptions { DataFolder = data.Path, BinaryFolders = [data.Path] };

        var error = await Assert.ThrowsAsync<LocalPostgresException>(
            () => LocalPostgresServer.StartAsync(empty, NullLogger.Instance, CancellationToken.None));

        Assert.Contains("apt-get install postgresql", error.Message, StringComparison.Ordinal);
        Assert.Contains("FLEETTREND_DATABASE", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cluster_of_a_version_that_is_not_installed_is_named()
    {
        var cluster = Directory.CreateDirectory(Path.Combine(data.Path, "postgres", "cluster"));
        await File.WriteAllTextAsync(Path.Combine(cluster.FullName, "PG_VERSION"), "9\n");

        var error = await Assert.ThrowsAsync<LocalPostgresException>(StartAsync);

        Assert.Contains("PostgreSQL 9", error.Message, StringComparison.Ordinal);
    }

    private Task<LocalPostgresServer> StartAsync() => LocalPostgresServer.StartAsync(
        new LocalPostgresOptions { DataFolder = data.Path }, NullLogger.Instance, CancellationToken.None);

    private static async Task<string?> AskAsync(string connectionString, string query)
    {
        // Not pooled: a pooled connection would outlive the server it belongs to.
        var target = new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false };
        await using var connection = new NpgsqlConnection(target.ConnectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(query, connection);
        return await command.ExecuteScalarAsync() as string;
    }

    private static bool IsAlive(int processId)
    {
        var status = $"/proc/{processId}/status";
        // A killed child of a parent that does not wait for it stays as a zombie: dead all the same.
        return File.Exists(status) && !File.ReadAllText(status).Contains("State:\tZ", StringComparison.Ordinal);
    }

    private static async Task KillServerAsync(int processId)
    {
        using var kill = Process.Start("kill", ["-9", $"{processId}"]);
        await kill.WaitForExitAsync();
        using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        while (IsAlive(processId))
            await Task.Delay(20, limit.Token);
    }
}

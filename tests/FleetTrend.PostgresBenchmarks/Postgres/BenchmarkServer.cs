using FleetTrend.Hosting.LocalPostgres;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;

namespace FleetTrend.PostgresBenchmarks.Postgres;

/// <summary>The server on which databases are made: one that was given, or a local one with the settings that the product
/// gives it.</summary>
internal sealed class BenchmarkServer : IAsyncDisposable
{
    private const int FirstWithStrategy = 15; // before, the files were copied without a word

    private readonly LocalPostgresServer? localServer;
    private readonly string connectionString;
    private int databases;

    private BenchmarkServer(LocalPostgresServer? local, string connectionString)
    {
        localServer = local;
        this.connectionString = connectionString;
    }

    public static async Task<BenchmarkServer> OpenAsync(string? given, string folder)
    {
        if (given is not null)
            return new BenchmarkServer(null, given);
        var local = await LocalPostgresServer.StartAsync(
            new LocalPostgresOptions { DataFolder = Path.Combine(folder, "data") }, NullLogger.Instance, default);
        return new BenchmarkServer(local, local.ConnectionString);
    }

    /// <summary>An empty database, or a copy of one to which nobody is connected.</summary>
    public async Task<BenchmarkDatabase> CreateAsync(string template = "template0")
    {
        var name = $"fleettrend_bench_{Environment.ProcessId}_{++databases}";
        await using var connection = await ConnectAsync();
        var strategy = connection.PostgreSqlVersion.Major >= FirstWithStrategy ? "strategy file_copy" : "";
        await ExecuteAsync(connection, $"create database {name} template {template} {strategy}");
        var target = new NpgsqlConnectionStringBuilder(connectionString) { Database = name };
        return new BenchmarkDatabase(this, name, target.ConnectionString);
    }

    /// <summary>Drops a database with the connections of whoever still has some.</summary>
    public async Task DropAsync(string name)
    {
        await using var connection = await ConnectAsync();
        await ExecuteAsync(connection, $"alter database {name} with allow_connections false");
        await ExecuteAsync(
            connection,
            $"""
             select pg_terminate_backend(pid, 5000) from pg_stat_activity
             where datname = '{name}' and usename = current_user
             """);
        await ExecuteAsync(connection, $"drop database {name}");
    }

    public async ValueTask DisposeAsync()
    {
        if (localServer is not null)
            await localServer.DisposeAsync();
    }

    private async Task<NpgsqlConnection> ConnectAsync()
    {
        var target = new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false };
        var connection = new NpgsqlConnection(target.ConnectionString);
        await connection.OpenAsync();
        return connection;
    }

    private static async Task ExecuteAsync(NpgsqlConnection connection, string statement)
    {
        await using var command = new NpgsqlCommand(statement, connection) { CommandTimeout = 0 };
        await command.ExecuteNonQueryAsync();
    }
}

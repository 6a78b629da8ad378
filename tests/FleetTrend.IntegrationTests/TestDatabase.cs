using Npgsql;

namespace FleetTrend.IntegrationTests;

/// <summary>A database of its own for one test class; dropped with it.</summary>
public sealed class TestDatabase : IAsyncDisposable
{
    private readonly PostgresFixture server;

    internal TestDatabase(PostgresFixture server, string name, string connectionString)
    {
        this.server = server;
        Name = name;
        ConnectionString = connectionString;
        DataSource = NpgsqlDataSource.Create(connectionString);
    }

    public string Name { get; }

    public string ConnectionString { get; }

    public NpgsqlDataSource DataSource { get; }

    /// <summary>Drops the database, connections of the code under test included. Not by WITH (FORCE): that is refused to
    /// an account like ours while the server's own autovacuum is at work there; a plain DROP sends it away.</summary>
    public async ValueTask DisposeAsync()
    {
        await DataSource.DisposeAsync();
        await server.ExecuteAsync($"ALTER DATABASE {Name} WITH ALLOW_CONNECTIONS false");
        await server.ExecuteAsync(
            $"SELECT pg_terminate_backend(pid, 5000) FROM pg_stat_activity WHERE datname = '{Name}' AND usename = current_user");
        await server.ExecuteAsync($"DROP DATABASE {Name}");
    }
}

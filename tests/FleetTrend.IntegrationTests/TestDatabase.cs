using Npgsql;

namespace FleetTrend.IntegrationTests;

/// <summary>A database of its own for one test class; dropped with it.</summary>
public sealed class TestDatabase : IAsyncDisposable
{
    private readonly PostgresFixture _server;

    internal TestDatabase(PostgresFixture server, string name, string connectionString)
    {
        _server = server;
        Name = name;
        ConnectionString = connectionString;
        DataSource = NpgsqlDataSource.Create(connectionString);
    }

    public string Name { get; }

    public string ConnectionString { get; }

    public NpgsqlDataSource DataSource { get; }

    /// <summary>Drops the database, connections of the code under test included.</summary>
    public async ValueTask DisposeAsync()
    {
        await DataSource.DisposeAsync();
        await _server.ExecuteAsync($"DROP DATABASE {Name} WITH (FORCE)");
    }
}

using Npgsql;

namespace FleetTrend.PostgresBenchmarks.Postgres;

/// <summary>A database; dropped with this object.</summary>
internal sealed class BenchmarkDatabase(BenchmarkServer server, string name, string connectionString) : IAsyncDisposable
{
    public string Name => name;

    public string ConnectionString => connectionString;

    public NpgsqlDataSource DataSource { get; } = NpgsqlDataSource.Create(connectionString);

    /// <summary>Closes our connections, so that it can be copied.</summary>
    public ValueTask CloseAsync() => DataSource.DisposeAsync();

    public async Task ExecuteAsync(string statement)
    {
        await using var command = DataSource.CreateCommand(statement);
        command.CommandTimeout = 0;
        await command.ExecuteNonQueryAsync();
    }

    public async Task<T> ReadAsync<T>(string statement, params object[] parameters)
    {
        await using var command = DataSource.CreateCommand(statement);
        command.CommandTimeout = 0;
        foreach (var parameter in parameters)
            command.Parameters.Add(new NpgsqlParameter { Value = parameter });
        return (T)(await command.ExecuteScalarAsync())!;
    }

    /// <summary>The first column of all rows.</summary>
    public async Task<IReadOnlyList<T>> ListAsync<T>(string statement, params object[] parameters)
    {
        await using var command = DataSource.CreateCommand(statement);
        foreach (var parameter in parameters)
            command.Parameters.Add(new NpgsqlParameter { Value = parameter });
        var values = new List<T>();
        await using var reader = await command.ExecuteReaderAsync();
        while (await reader.ReadAsync())
            values.Add(reader.GetFieldValue<T>(0));
        return values;
    }

    public async ValueTask DisposeAsync()
    {
        await CloseAsync();
        await server.DropAsync(name);
    }
}

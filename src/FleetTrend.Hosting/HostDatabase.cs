using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.LocalPostgres;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace FleetTrend.Hosting;

/// <summary>The database of a process: the server that the operator gave, or a local one that lives as long as this
/// object. Disposing closes the connections and leaves the local server.</summary>
public sealed class HostDatabase : IAsyncDisposable
{
    /// <summary>Name of the data source in metrics and traces; without a name they would carry the connection string,
    /// password included.</summary>
    public const string SourceName = "fleettrend";

    private readonly LocalPostgresServer? localServer;

    private HostDatabase(string connectionString, LocalPostgresServer? local, ILoggerFactory loggers)
    {
        localServer = local;
        ConnectionString = connectionString;
        DataSource = new NpgsqlDataSourceBuilder(connectionString) { Name = SourceName }
            .UseLoggerFactory(loggers)
            .Build();
    }

    /// <summary>Pooled connections, for the whole process.</summary>
    public NpgsqlDataSource DataSource { get; }

    /// <summary>For libraries that take nothing else. Holds the password: never log it.</summary>
    public string ConnectionString { get; }

    /// <summary>Whether the product runs the server itself.</summary>
    public bool IsLocal => localServer is not null;

    /// <summary>Starts or joins the local server where no connection string is given. A given server is not contacted:
    /// it may come up later than we do.</summary>
    /// <exception cref="LocalPostgresException">The local server cannot be made ready.</exception>
    public static async Task<HostDatabase> OpenAsync(
        HostSettings settings, ILoggerFactory loggers, CancellationToken ct)
    {
        if (settings.Database is { } given)
            return new HostDatabase(given, null, loggers);
        var local = await LocalPostgresServer.StartAsync(
            new LocalPostgresOptions { DataFolder = settings.DataFolder },
            loggers.CreateLogger<LocalPostgresServer>(), ct);
        return new HostDatabase(local.ConnectionString, local, loggers);
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        await DataSource.DisposeAsync();
        if (localServer is not null)
            await localServer.DisposeAsync();
    }
}

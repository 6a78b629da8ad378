using System.Diagnostics;
using System.Net.Sockets;
using FleetTrend.Hosting.Configuration;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace FleetTrend.Hosting.Health;

/// <summary>Waits for a given database that is not up yet. Meanwhile the addresses of the host answer: live, not ready, and 503 to all else,
/// which gRPC clients know as UNAVAILABLE.</summary>
public static class DatabaseWait
{
    private static readonly TimeSpan LongestPause = TimeSpan.FromSeconds(5);

    /// <summary>Returns once the database answers. A local one does already.</summary>
    /// <param name="settings">Validated settings, the bound among them.</param>
    /// <param name="database">The database.</param>
    /// <param name="listen">Where the host will listen.</param>
    /// <param name="loggers">Where waiting is told.</param>
    /// <param name="ct">Cancels.</param>
    /// <exception cref="DatabaseNotReachedException">It did not answer within the bound, or it answered with a refusal that waiting does not mend.</exception>
    /// <exception cref="OperationCanceledException">The process was asked to stop while it waited.</exception>
    public static async Task UntilAnsweredAsync(
        HostSettings settings, HostDatabase database, Action<IWebHostBuilder> listen, ILoggerFactory loggers, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(database);
        if (database.IsLocal || await TryAsync(database, ct) is not { } first)
            return;
        var where = Where(database);
        var started = Stopwatch.GetTimestamp();
        ThrowIfOver(settings, where, started, first);
        await using var meanwhile = Meanwhile(listen);
        await meanwhile.StartAsync(ct);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(
            ct, meanwhile.Services.GetRequiredService<IHostApplicationLifetime>().ApplicationStopping);
        var log = loggers.CreateLogger(typeof(DatabaseWait).FullName!);
        var pause = TimeSpan.FromSeconds(0.5);
        for (Exception? failure = first; failure is not null; failure = await TryAsync(database, stop.Token))
        {
            ThrowIfOver(settings, where, started, failure);
            HostingLog.WaitingForDatabase(log, where, failure.Message, (settings.DatabaseWait - Stopwatch.GetElapsedTime(started)).TotalSeconds);
            await Task.Delay(pause, TimeProvider.System, stop.Token);
            pause = pause * 2 < LongestPause ? pause * 2 : LongestPause;
        }

        HostingLog.DatabaseReached(log, where, Stopwatch.GetElapsedTime(started).TotalSeconds);
        await meanwhile.StopAsync(ct);
    }

    /// <summary>Null where the database answers, else why it does not.</summary>
    private static async Task<Exception?> TryAsync(HostDatabase database, CancellationToken ct)
    {
        try
        {
            await using var command = database.DataSource.CreateCommand("SELECT 1");
            await command.ExecuteScalarAsync(ct);
            return null;
        }
        catch (Exception failure) when (failure is NpgsqlException or SocketException or TimeoutException)
        {
            return failure;
        }
    }

    /// <summary>
    /// A server that is starting up says so with a transient error; a wrong password or a database that is not there does not
    /// pass by waiting.
    /// </summary>
    private static void ThrowIfOver(HostSettings settings, string where, long started, Exception failure)
    {
        if (failure is PostgresException { IsTransient: false } refused)
        {
            throw new DatabaseNotReachedException(
                $"The database at {where} refuses: {refused.MessageText} ({refused.SqlState}). Check user, password and database in {SettingNames.Database}.", failure);
        }

        if (Stopwatch.GetElapsedTime(started) >= settings.DatabaseWait)
        {
            throw new DatabaseNotReachedException(
                $"The database at {where} did not answer within {settings.DatabaseWait.TotalSeconds:0} s ({SettingNames.DatabaseWaitSeconds}): {failure.Message}", failure);
        }
    }

    private static string Where(HostDatabase database)
    {
        var parts = new NpgsqlConnectionStringBuilder(database.ConnectionString);
        return $"{parts.Host}:{parts.Port}";
    }

    private static WebApplication Meanwhile(Action<IWebHostBuilder> listen)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        listen(builder.WebHost);
        builder.WebHost.UseKestrelHttpsConfiguration();
        builder.Services.AddHealthChecks();
        var app = builder.Build();
        app.MapHealthChecks(HealthEndpoints.LivePath);
        // Not ready even once the database answers: the host itself is not there yet.
        app.MapFallback(context =>
        {
            context.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
            return context.Response.WriteAsync("Waiting for the database.\n", context.RequestAborted);
        });
        return app;
    }
}

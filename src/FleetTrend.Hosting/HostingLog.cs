using FleetTrend.Hosting.Configuration;
using Microsoft.Extensions.Logging;

namespace FleetTrend.Hosting;

/// <summary>Every message that Hosting logs, numbered. No message carries a connection string or a password.</summary>
internal static partial class HostingLog
{
    [LoggerMessage(1101, LogLevel.Information, "Making a PostgreSQL {Major} cluster in {Folder}")]
    internal static partial void MakingCluster(ILogger log, int major, string folder);

    [LoggerMessage(1102, LogLevel.Information,
        "Started PostgreSQL {Major} (process {ProcessId}, 127.0.0.1:{Port}) in {Folder}")]
    internal static partial void ServerStarted(ILogger log, int major, int processId, int port, string folder);

    [LoggerMessage(1103, LogLevel.Information,
        "Using the local PostgreSQL that runs already (process {ProcessId}, 127.0.0.1:{Port})")]
    internal static partial void ServerJoined(ILogger log, int processId, int port);

    [LoggerMessage(1104, LogLevel.Information, "Stopped the local PostgreSQL in {Folder}")]
    internal static partial void ServerStopped(ILogger log, string folder);

    [LoggerMessage(1105, LogLevel.Information,
        "Leaving the local PostgreSQL in {Folder} running: another process uses it")]
    internal static partial void LeavingServer(ILogger log, string folder);

    [LoggerMessage(1106, LogLevel.Warning, "The local PostgreSQL in {Folder} could not be stopped: {Reason}")]
    internal static partial void ServerNotStopped(ILogger log, string folder, string reason);

    [LoggerMessage(1201, LogLevel.Information, "Settings: {Settings}")]
    internal static partial void Settings(ILogger log, HostSettings settings);

    [LoggerMessage(1202, LogLevel.Warning, "The setting {Name} means nothing here; is it misspelt?")]
    internal static partial void UnknownSetting(ILogger log, string name);

    [LoggerMessage(1301, LogLevel.Warning, "Waiting for the database at {Where}: {Reason} Giving up in {Left}")]
    internal static partial void WaitingForDatabase(ILogger log, string where, string reason, TimeSpan left);

    [LoggerMessage(1302, LogLevel.Information, "The database at {Where} answers after {Elapsed}")]
    internal static partial void DatabaseAnswers(ILogger log, string where, TimeSpan elapsed);
}

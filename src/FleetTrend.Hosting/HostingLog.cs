using FleetTrend.Hosting.Configuration;
using Microsoft.Extensions.Logging;

namespace FleetTrend.Hosting;

/// <summary>Every message that Hosting logs, numbered 1000 to 1999. No message carries a connection string or a password.</summary>
internal static partial class HostingLog
{
    [LoggerMessage(1101, LogLevel.Information, "Creating a PostgreSQL {Major} cluster in {Folder}")]
    internal static partial void MakingCluster(ILogger log, int major, string folder);

    [LoggerMessage(1102, LogLevel.Information,
        "Started PostgreSQL {Major} (process {ProcessId}, 127.0.0.1:{Port}) in {Folder}")]
    internal static partial void ServerStarted(ILogger log, int major, int processId, int port, string folder);

    [LoggerMessage(1103, LogLevel.Information,
        "Joined the local PostgreSQL that already runs (process {ProcessId}, 127.0.0.1:{Port})")]
    internal static partial void ServerJoined(ILogger log, int processId, int port);

    [LoggerMessage(1104, LogLevel.Information, "Stopped the local PostgreSQL in {Folder}")]
    internal static partial void ServerStopped(ILogger log, string folder);

    [LoggerMessage(1105, LogLevel.Information,
        "Left the local PostgreSQL in {Folder} running: another process uses it")]
    internal static partial void LeavingServer(ILogger log, string folder);

    [LoggerMessage(1106, LogLevel.Warning, "Failed to stop the local PostgreSQL in {Folder}: {Reason}")]
    internal static partial void ServerNotStopped(ILogger log, string folder, string reason);

    [LoggerMessage(1201, LogLevel.Information, "Read the settings of {Process}: {Settings}")]
    internal static partial void SettingsRead(ILogger log, string process, HostSettings settings);

    [LoggerMessage(1202, LogLevel.Warning, "Ignored the unknown setting {Name}: is it misspelt?")]
    internal static partial void UnknownSetting(ILogger log, string name);

    [LoggerMessage(1203, LogLevel.Information, "Started {Process}: listening on {Addresses}")]
    internal static partial void Started(ILogger log, string process, string addresses);

    [LoggerMessage(1204, LogLevel.Information, "Stopping {Process}")]
    internal static partial void Stopping(ILogger log, string process);

    [LoggerMessage(1301, LogLevel.Warning, "Waiting for the database at {Where}: {Reason} Giving up in {SecondsLeft:0} s")]
    internal static partial void WaitingForDatabase(ILogger log, string where, string reason, double secondsLeft);

    [LoggerMessage(1302, LogLevel.Information, "Reached the database at {Where} after {Seconds:0.0} s")]
    internal static partial void DatabaseReached(ILogger log, string where, double seconds);
}

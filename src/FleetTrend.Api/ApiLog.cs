using System.Net;
using FleetTrend.Hosting.Configuration;

namespace FleetTrend.Api;

/// <summary>Every log message of the API, numbered from 3001.</summary>
internal static partial class ApiLog
{
    [LoggerMessage(3001, LogLevel.Information, "Records of one call: {Accepted} accepted, {Unchanged} unchanged, {Refused} refused")]
    public static partial void RecordsPushed(ILogger log, int accepted, int unchanged, int refused);

    [LoggerMessage(3002, LogLevel.Warning, "Refused {Count} of {Total} records; the first: {Reason} at {Field}")]
    public static partial void RecordsRefused(ILogger log, int count, int total, string reason, string field);

    [LoggerMessage(3003, LogLevel.Information, "Stream ended: {Acknowledged} records acknowledged")]
    public static partial void StreamEnded(ILogger log, long acknowledged);

    [LoggerMessage(3004, LogLevel.Information, "Stream broken off by the caller after {Acknowledged} acknowledged records")]
    public static partial void StreamBroken(ILogger log, long acknowledged);

    [LoggerMessage(3005, LogLevel.Information, "{Count} held records were released")]
    public static partial void HeldRecordsReleased(ILogger log, int count);

    [LoggerMessage(3201, LogLevel.Warning, "Refused a call of {Method} from {Address}: {Reason} (key {KeyId})")]
    public static partial void CallRefused(ILogger log, string method, IPAddress address, string reason, string keyId);

    [LoggerMessage(3202, LogLevel.Warning, "Further refused calls from {Address} are counted and not logged, for up to {Seconds} s")]
    public static partial void RefusedCallsNotLogged(ILogger log, IPAddress address, double seconds);

    [LoggerMessage(3203, LogLevel.Information, "Key {KeyId} was made by key {By}")]
    public static partial void KeyMade(ILogger log, string keyId, string by);

    [LoggerMessage(3204, LogLevel.Information, "Key {KeyId} was revoked by key {By}")]
    public static partial void KeyRevoked(ILogger log, string keyId, string by);

    [LoggerMessage(3205, LogLevel.Warning, "The first key, {KeyId}, which administers, is in {File}; keep it elsewhere and delete the file")]
    public static partial void FirstKeyMade(ILogger log, string keyId, string file);

    [LoggerMessage(3207, LogLevel.Information, "Flag {FlagId} was answered by key {By}: {State}")]
    public static partial void FlagAnswered(ILogger log, long flagId, string by, string state);

    [LoggerMessage(3208, LogLevel.Information, "Data check {CheckId} was closed by key {By}")]
    public static partial void CheckClosed(ILogger log, long checkId, string by);

    [LoggerMessage(3209, LogLevel.Information, "Finding merge {MergeId} was decided by key {By}")]
    public static partial void MergeDecided(ILogger log, long mergeId, string by);

    [LoggerMessage(3210, LogLevel.Information, "A {Kind} code of source {Source} was given its meaning by key {By}")]
    public static partial void CodeSet(ILogger log, string kind, string source, string by);

    [LoggerMessage(3206, LogLevel.Warning, "{Address} speaks plain text with other machines: whoever is on the way reads keys and data")]
    public static partial void PlainText(ILogger log, NetworkAddress address);

    [LoggerMessage(3101, LogLevel.Error, "Fault in {Method}")]
    public static partial void Fault(ILogger log, string method, Exception exception);

    [LoggerMessage(3102, LogLevel.Warning, "The database does not answer in {Method}: {Message}")]
    public static partial void DatabaseUnavailable(ILogger log, string method, string message);
}

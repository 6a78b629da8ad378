using System.Net;
using FleetTrend.Hosting.Configuration;

namespace FleetTrend.Api;

/// <summary>Every log message of the API, numbered 3000 to 3999.</summary>
internal static partial class ApiLog
{
    [LoggerMessage(3001, LogLevel.Information, "Received records: {Accepted} accepted, {Unchanged} unchanged, {Refused} refused")]
    public static partial void RecordsPushed(ILogger log, int accepted, int unchanged, int refused);

    [LoggerMessage(3002, LogLevel.Warning, "Refused {Count} of {Total} records: the first with {Reason} at {Field}")]
    public static partial void RecordsRefused(ILogger log, int count, int total, string reason, string field);

    [LoggerMessage(3003, LogLevel.Information, "Ended stream: {Acknowledged} records acknowledged")]
    public static partial void StreamEnded(ILogger log, long acknowledged);

    [LoggerMessage(3004, LogLevel.Information, "Lost stream: the caller left after {Acknowledged} acknowledged records")]
    public static partial void StreamBroken(ILogger log, long acknowledged);

    [LoggerMessage(3005, LogLevel.Information, "Accepted {Count} held records")]
    public static partial void HeldRecordsReleased(ILogger log, int count);

    [LoggerMessage(3201, LogLevel.Warning, "Refused call of {Method} from {Address}: {Reason} (key {KeyId})")]
    public static partial void CallRefused(ILogger log, string method, IPAddress address, string reason, string keyId);

    [LoggerMessage(3202, LogLevel.Warning, "Counting further refused calls from {Address} without logging them, for up to {Seconds:0} s")]
    public static partial void RefusedCallsNotLogged(ILogger log, IPAddress address, double seconds);

    [LoggerMessage(3203, LogLevel.Information, "Created key {KeyId} (by {By})")]
    public static partial void KeyMade(ILogger log, string keyId, string by);

    [LoggerMessage(3204, LogLevel.Information, "Revoked key {KeyId} (by {By})")]
    public static partial void KeyRevoked(ILogger log, string keyId, string by);

    [LoggerMessage(3205, LogLevel.Warning, "Wrote the first administrator key {KeyId} to {File}: keep it elsewhere, then delete the file")]
    public static partial void FirstKeyMade(ILogger log, string keyId, string file);

    [LoggerMessage(3207, LogLevel.Information, "Answered flag {FlagId}: {State} (by {By})")]
    public static partial void FlagAnswered(ILogger log, long flagId, string by, string state);

    [LoggerMessage(3208, LogLevel.Information, "Closed data problem {ProblemId} (by {By})")]
    public static partial void DataProblemClosed(ILogger log, long problemId, string by);

    [LoggerMessage(3209, LogLevel.Information, "Decided finding merge {MergeId} (by {By})")]
    public static partial void MergeDecided(ILogger log, long mergeId, string by);

    [LoggerMessage(3210, LogLevel.Information, "Set the meaning of a {Kind} code of source {Source} (by {By})")]
    public static partial void CodeSet(ILogger log, string kind, string source, string by);

    [LoggerMessage(3211, LogLevel.Information, "Changed the parameters: revision {Revision} (by {By})")]
    public static partial void ParametersChanged(ILogger log, int revision, string by);

    [LoggerMessage(3212, LogLevel.Warning, "Wrote the first sign-in link to {File}: within {Hours:0} h, whoever opens it becomes the administrator")]
    public static partial void FirstLinkWritten(ILogger log, string file, double hours);

    [LoggerMessage(3213, LogLevel.Information, "Added person-{PersonId} as {Role} (by {By})")]
    public static partial void PersonAdded(ILogger log, long personId, string role, string by);

    [LoggerMessage(3214, LogLevel.Information, "Changed person-{PersonId}: {What} (by {By})")]
    public static partial void PersonChanged(ILogger log, long personId, string what, string by);

    [LoggerMessage(3215, LogLevel.Information, "Set the password of person-{PersonId}: earlier sessions have ended")]
    public static partial void PasswordSet(ILogger log, long personId);

    [LoggerMessage(3216, LogLevel.Warning, "Locked person-{PersonId} for {Minutes:0} min after wrong passwords")]
    public static partial void PersonLocked(ILogger log, long personId, double minutes);

    [LoggerMessage(3217, LogLevel.Information, "Set report schedule {Schedule}: paused {Paused}, {Recipients} recipients (by {By})")]
    public static partial void ScheduleSet(ILogger log, string schedule, bool paused, int recipients, string by);

    [LoggerMessage(3218, LogLevel.Information, "Removed report schedule {Schedule} (by {By})")]
    public static partial void ScheduleRemoved(ILogger log, string schedule, string by);

    [LoggerMessage(3219, LogLevel.Information, "Received the wish to send report schedule {Schedule} now (by {By})")]
    public static partial void SendAsked(ILogger log, string schedule, string by);

    [LoggerMessage(3220, LogLevel.Information, "Mailed person-{PersonId} a link for a password")]
    public static partial void LinkMailed(ILogger log, long personId);

    [LoggerMessage(3221, LogLevel.Warning, "Lost a mail with a link for a password: {Message}")]
    public static partial void LinkNotMailed(ILogger log, string message);

    [LoggerMessage(3206, LogLevel.Warning, "Traffic is unencrypted on {Address}: keys and data can be read in transit")]
    public static partial void PlainText(ILogger log, NetworkAddress address);

    [LoggerMessage(3101, LogLevel.Error, "Failed in {Method}")]
    public static partial void Fault(ILogger log, string method, Exception exception);

    [LoggerMessage(3102, LogLevel.Warning, "Lost the database in {Method}: {Message}")]
    public static partial void DatabaseUnavailable(ILogger log, string method, string message);
}

namespace FleetTrend.Worker;

/// <summary>All log messages of the worker.</summary>
internal static partial class WorkerLog
{
    [LoggerMessage(4002, LogLevel.Information,
        "Wrote the report of {Base} for {First:yyyy-MM-dd} to {Last:yyyy-MM-dd}, {Seconds:0.0} s after its as-of time: {Subject}")]
    internal static partial void ReportWritten(ILogger log, string @base, DateOnly first, DateOnly last, string subject, double seconds);

    [LoggerMessage(4003, LogLevel.Information, "Sent mail {MessageId} at attempt {Attempt}")]
    internal static partial void MailSent(ILogger log, string messageId, int attempt);

    [LoggerMessage(4004, LogLevel.Warning, "Failed to send mail {MessageId} at attempt {Attempt}: trying again in {Seconds:0} s")]
    internal static partial void MailFailed(ILogger log, string messageId, int attempt, double seconds, Exception failure);

    [LoggerMessage(4006, LogLevel.Error, "Gave up mail {MailId} ({MessageId}) of report {ReportId} after {Attempts} attempts: RetryMail sends it again")]
    internal static partial void MailGivenUp(ILogger log, long mailId, string messageId, long reportId, int attempts, Exception failure);

    [LoggerMessage(4007, LogLevel.Information,
        "Removed old rows: results of {Trends} earlier refreshes, {Mails} mails, {ReportRequests} answered report requests, {HeldRecords} copies of accepted held records")]
    internal static partial void OldRowsRemoved(ILogger log, int trends, int mails, int reportRequests, int heldRecords);

    [LoggerMessage(4008, LogLevel.Error, "Failed to make the reports of request {RequestId}")]
    internal static partial void RequestedReportFailed(ILogger log, string requestId, Exception failure);

    [LoggerMessage(4009, LogLevel.Warning,
        "Reported schedule {Schedule}, due at {Due:O}, {Minutes:0} minutes late: no worker ran. {Missed} earlier ones were missed and are not made")]
    internal static partial void ScheduleLate(ILogger log, string schedule, DateTimeOffset due, double minutes, int missed);

    [LoggerMessage(4010, LogLevel.Error, "Failed to make the report of schedule {Schedule}: trying again in {Seconds:0} s")]
    internal static partial void ScheduleFailed(ILogger log, string schedule, double seconds, Exception failure);
}

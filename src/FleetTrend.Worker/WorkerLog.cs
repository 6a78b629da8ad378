namespace FleetTrend.Worker;

/// <summary>All log messages of the worker.</summary>
internal static partial class WorkerLog
{
    [LoggerMessage(3001, LogLevel.Information, "Trends refreshed as of {AsOf:O}: {Aircraft} aircraft, {Flags} flags, {Raised} of them new, in {Elapsed}")]
    internal static partial void TrendsRefreshed(ILogger log, DateTimeOffset asOf, int aircraft, int flags, int raised, TimeSpan elapsed);

    [LoggerMessage(3002, LogLevel.Information, "Report for {Base}, {First} to {Last}, made {Age} after its as-of moment: {Subject}")]
    internal static partial void ReportWritten(ILogger log, string @base, DateOnly first, DateOnly last, string subject, TimeSpan age);

    [LoggerMessage(3003, LogLevel.Information, "Mail {MessageId} sent at attempt {Attempt}")]
    internal static partial void MailSent(ILogger log, string messageId, int attempt);

    [LoggerMessage(3004, LogLevel.Warning, "Mail {MessageId} failed at attempt {Attempt}; next in {Pause}")]
    internal static partial void MailFailed(ILogger log, string messageId, int attempt, TimeSpan pause, Exception failure);

    [LoggerMessage(3006, LogLevel.Error, "Mail {MailId} ({MessageId}) of report {ReportId} is given up after {Attempts} attempts; RetryMail tries it again")]
    internal static partial void MailGivenUp(ILogger log, long mailId, string messageId, long reportId, int attempts, Exception failure);

    [LoggerMessage(3007, LogLevel.Information,
        "Old rows removed: {Snapshots} snapshots that no report needs, {Mails} mails, {ReportRequests} answered requests for reports, {HeldRecords} copies of held records that were accepted")]
    internal static partial void OldRowsRemoved(ILogger log, int snapshots, int mails, int reportRequests, int heldRecords);

    [LoggerMessage(3005, LogLevel.Information, "Records checked as of {AsOf:O}: {Problems} do not add up, {Opened} of them new")]
    internal static partial void DataChecked(ILogger log, DateTimeOffset asOf, int problems, int opened);
}

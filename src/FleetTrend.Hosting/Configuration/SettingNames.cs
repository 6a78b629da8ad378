namespace FleetTrend.Hosting.Configuration;

/// <summary>Names of all settings: environment variables, or <c>--NAME=value</c> on the command line.
/// deploy/README.md describes each.</summary>
public static class SettingNames
{
    /// <summary>Npgsql connection string of a running server; absent starts a local one.</summary>
    public const string Database = "FLEETTREND_DATABASE";

    /// <summary>Longest wait for a given database at start.</summary>
    public const string DatabaseWaitSeconds = "FLEETTREND_DATABASE_WAIT_SECONDS";

    /// <summary>Data folder.</summary>
    public const string DataFolder = "FLEETTREND_DATA";

    /// <summary>Address of gRPC (HTTP/2; with TLS HTTP/1.1 too).</summary>
    public const string GrpcAddress = "FLEETTREND_GRPC_ADDRESS";

    /// <summary>Address of pages, JSON and health (HTTP/1.1).</summary>
    public const string HttpAddress = "FLEETTREND_HTTP_ADDRESS";

    /// <summary>Address of the worker's health and job pages (HTTP/1.1).</summary>
    public const string WorkerAddress = "FLEETTREND_WORKER_ADDRESS";

    /// <summary>A further address of the API on the loopback interface, HTTP/1.1 without TLS.</summary>
    public const string LocalAddress = "FLEETTREND_LOCAL_ADDRESS";

    /// <summary>Certificate, PEM or PFX.</summary>
    public const string TlsCertificate = "FLEETTREND_TLS_CERTIFICATE";

    /// <summary>Private key of the certificate, PEM.</summary>
    public const string TlsKey = "FLEETTREND_TLS_KEY";

    /// <summary>Password of the private key. Secret.</summary>
    public const string TlsPassword = "FLEETTREND_TLS_PASSWORD";

    /// <summary>true: keys and data may cross the network unencrypted.</summary>
    public const string AllowPlainText = "FLEETTREND_ALLOW_PLAIN_TEXT";

    /// <summary>Calls per second with one key.</summary>
    public const string CallsPerSecond = "FLEETTREND_CALLS_PER_SECOND";

    /// <summary>Calls at once with one key.</summary>
    public const string CallsAtOnce = "FLEETTREND_CALLS_AT_ONCE";

    /// <summary>Refused calls of one address that are logged and answered in detail.</summary>
    public const string RefusedCallsPerMinute = "FLEETTREND_REFUSED_CALLS_PER_MINUTE";

    /// <summary>Names, beside those that are always allowed, by which the API may be called.</summary>
    public const string AllowedHosts = "FLEETTREND_ALLOWED_HOSTS";

    /// <summary>Proxies whose word on the caller's address and scheme counts.</summary>
    public const string TrustedProxies = "FLEETTREND_TRUSTED_PROXIES";

    /// <summary>How people reach the pages; links in mails begin with it.</summary>
    public const string PublicUrl = "FLEETTREND_PUBLIC_URL";

    /// <summary>A line that stands first in every report.</summary>
    public const string Notice = "FLEETTREND_NOTICE";

    /// <summary>Mailbox folder.</summary>
    public const string MailFolder = "FLEETTREND_MAIL_FOLDER";

    /// <summary>Sender address.</summary>
    public const string MailFrom = "FLEETTREND_MAIL_FROM";

    /// <summary>Hours after which a mail that is not taken is given up.</summary>
    public const string MailGiveUpHours = "FLEETTREND_MAIL_GIVE_UP_HOURS";

    /// <summary>Mail server.</summary>
    public const string SmtpHost = "FLEETTREND_SMTP_HOST";

    /// <summary>Mail server's port.</summary>
    public const string SmtpPort = "FLEETTREND_SMTP_PORT";

    /// <summary>starttls, tls or none.</summary>
    public const string SmtpSecurity = "FLEETTREND_SMTP_SECURITY";

    /// <summary>Mail server's user.</summary>
    public const string SmtpUser = "FLEETTREND_SMTP_USER";

    /// <summary>Mail server's password. Secret.</summary>
    public const string SmtpPassword = "FLEETTREND_SMTP_PASSWORD";

    /// <summary>IANA time zone of the schedule.</summary>
    public const string TimeZone = "FLEETTREND_TIME_ZONE";

    /// <summary>Weekday and time of the weekly report.</summary>
    public const string WeeklyReport = "FLEETTREND_WEEKLY_REPORT";

    /// <summary>Time of the nightly refresh.</summary>
    public const string NightlyRefresh = "FLEETTREND_NIGHTLY_REFRESH";

    /// <summary>Seconds between a record and the refresh it causes.</summary>
    public const string RefreshDelaySeconds = "FLEETTREND_REFRESH_DELAY_SECONDS";

    /// <summary>Least seconds between two refreshes that nobody asked for.</summary>
    public const string RefreshLeastSeconds = "FLEETTREND_REFRESH_LEAST_SECONDS";

    /// <summary>Days for which computed trends stay that no report was made from.</summary>
    public const string KeepSnapshotsDays = "FLEETTREND_KEEP_SNAPSHOTS_DAYS";

    /// <summary>Days for which mails stay that were sent or given up.</summary>
    public const string KeepMailsDays = "FLEETTREND_KEEP_MAILS_DAYS";

    /// <summary>Days for which answered requests and accepted held records stay.</summary>
    public const string KeepAnsweredDays = "FLEETTREND_KEEP_ANSWERED_DAYS";

    /// <summary>Lowest level of our own log lines.</summary>
    public const string LogLevel = "FLEETTREND_LOG_LEVEL";

    /// <summary>OpenTelemetry collector; the standard's own name.</summary>
    public const string OtlpEndpoint = "OTEL_EXPORTER_OTLP_ENDPOINT";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        Database, DatabaseWaitSeconds, DataFolder, GrpcAddress, HttpAddress, WorkerAddress, LocalAddress,
        TlsCertificate, TlsKey, TlsPassword, AllowPlainText, CallsPerSecond, CallsAtOnce, RefusedCallsPerMinute,
        AllowedHosts, TrustedProxies, PublicUrl, Notice, MailFolder, MailFrom,
        MailGiveUpHours, SmtpHost, SmtpPort, SmtpSecurity, SmtpUser, SmtpPassword, TimeZone, WeeklyReport,
        NightlyRefresh, RefreshDelaySeconds, RefreshLeastSeconds, KeepSnapshotsDays, KeepMailsDays, KeepAnsweredDays, LogLevel, OtlpEndpoint,
    ];

    /// <summary>Names that mean something to programs beside the hosts, on the same machine: those that send records, and compose.</summary>
    public static IReadOnlyList<string> OfOthers { get; } =
    [
        "FLEETTREND_KEY", "FLEETTREND_SERVER", "FLEETTREND_JSON",
        "FLEETTREND_DB_PASSWORD", "FLEETTREND_SDK_IMAGE", "FLEETTREND_RUNTIME_IMAGE", "FLEETTREND_POSTGRES_IMAGE",
    ];
}

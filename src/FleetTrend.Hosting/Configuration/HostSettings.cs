using System.Globalization;
using System.Net;
using System.Net.Mail;
using System.Net.Sockets;
using System.Security.Cryptography;
using FleetTrend.Records.Schedules;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Logging;
using Npgsql;

namespace FleetTrend.Hosting.Configuration;

/// <summary>What an operator can set, validated. Every property has a default that suits a small shop's one machine;
/// <see cref="SettingNames"/> lists the names, deploy/README.md describes them.</summary>
public sealed record HostSettings
{
    private const int DefaultDatabaseWaitSeconds = 120;

    /// <summary>Npgsql connection string; null starts a local PostgreSQL in <see cref="DataFolder"/>. Secret.</summary>
    public string? Database { get; init; }

    /// <summary>How long a start waits for a given database that is not up, 0 to 86,400 s.</summary>
    public TimeSpan DatabaseWait { get; init; } = TimeSpan.FromSeconds(DefaultDatabaseWaitSeconds);

    /// <summary>Folder for the local PostgreSQL and the mailbox.</summary>
    public string DataFolder { get; init; } = "data";

    /// <summary>gRPC: HTTP/2; with TLS HTTP/1.1 as well.</summary>
    public NetworkAddress GrpcAddress { get; init; } = NetworkAddress.Loopback(5081);

    /// <summary>Pages, JSON and health of the API: HTTP/1.1; with TLS HTTP/2 as well, and it may be the address of gRPC.</summary>
    public NetworkAddress HttpAddress { get; init; } = NetworkAddress.Loopback(5080);

    /// <summary>Health of the worker: HTTP/1.1.</summary>
    public NetworkAddress WorkerAddress { get; init; } = NetworkAddress.Loopback(5082);

    /// <summary>A further address of the API on the loopback interface, HTTP/1.1 without TLS, for health checks; null for none.</summary>
    public NetworkAddress? LocalAddress { get; init; }

    /// <summary>The certificate of the API; null speaks plain text.</summary>
    public TlsSettings? Tls { get; init; }

    /// <summary>Whether the API may speak plain text with other machines.</summary>
    public bool AllowPlainText { get; init; }

    /// <summary>Names by which the API may be called, beside IP addresses, localhost and the host of <see cref="PublicUrl"/>: host names,
    /// <c>*.example.org</c> for all below one, <c>*</c> for any.</summary>
    public IReadOnlyList<string> AllowedHosts { get; init; } = [];

    /// <summary>Proxies whose headers <c>X-Forwarded-For</c> and <c>X-Forwarded-Proto</c> count; nobody else's do.</summary>
    public IReadOnlyList<IPNetwork> TrustedProxies { get; init; } = [];

    /// <summary>How people reach the pages, without a closing slash.</summary>
    public string PublicUrl { get; init; } = "http://127.0.0.1:5080";

    /// <summary>A line that stands first in every report and on every page, such as that the data are synthetic; null for none.</summary>
    public string? Notice { get; init; }

    /// <summary>Where reports go.</summary>
    public MailSettings Mail { get; init; } = new();

    /// <summary>When the worker does what.</summary>
    public ScheduleSettings Schedule { get; init; } = new();

    /// <summary>How long rows stay that nothing needs any more.</summary>
    public RetentionSettings Retention { get; init; } = new();

    /// <summary>How much callers may ask of the API.</summary>
    public AccessSettings Access { get; init; } = new();

    /// <summary>Whether who visits the pages without signing in is an invented director. No setting of an operator: the demo sets it, which
    /// shows invented data on one machine.</summary>
    public bool DemoDirector { get; init; }

    /// <summary>Lowest level of our own log lines; those of libraries begin at warnings.</summary>
    public LogLevel LogLevel { get; init; } = LogLevel.Information;

    /// <summary>OpenTelemetry collector (OTLP); null exports nothing.</summary>
    public Uri? OtlpEndpoint { get; init; }

    /// <summary>Names that begin with FLEETTREND_ and mean nothing: most likely misspelt.</summary>
    public IReadOnlyList<string> UnknownNames { get; init; } = [];

    /// <summary>Whether one port serves gRPC and HTTP, which takes TLS.</summary>
    public bool HasOnePort => Tls is not null && GrpcAddress == HttpAddress;

    /// <summary>Reads the settings of a host.</summary>
    /// <exception cref="HostSettingsException">Any setting breaks its rule; all are listed.</exception>
    public static HostSettings Read(IConfiguration configuration)
    {
        var reader = new SettingReader(configuration);
        var dataFolder = reader.Text(SettingNames.DataFolder) ?? "data";
        var http = Address(reader, SettingNames.HttpAddress, 5080);
        var tls = ReadTls(reader);
        var settings = new HostSettings
        {
            Database = ReadDatabase(reader),
            DatabaseWait = TimeSpan.FromSeconds(reader.Whole(SettingNames.DatabaseWaitSeconds, DefaultDatabaseWaitSeconds, 0, 86_400)),
            DataFolder = dataFolder,
            GrpcAddress = Address(reader, SettingNames.GrpcAddress, 5081),
            HttpAddress = http,
            WorkerAddress = Address(reader, SettingNames.WorkerAddress, 5082),
            LocalAddress = reader.Value<NetworkAddress?>(SettingNames.LocalAddress, null,
                "must be host:port on the loopback interface, such as 127.0.0.1:5083",
                (string text, out NetworkAddress? value) =>
                {
                    var isAddress = NetworkAddress.TryParse(text, out var address);
                    value = address;
                    return isAddress && address.IsLoopback;
                }),
            Tls = tls,
            AllowPlainText = reader.Value(SettingNames.AllowPlainText, false, "must be true or false", bool.TryParse),
            AllowedHosts = reader.List<string>(SettingNames.AllowedHosts,
                "must be host names, with commas between them, such as trend.example.org,*.shop.example, without ports", TryParseHost),
            TrustedProxies = reader.List<IPNetwork>(SettingNames.TrustedProxies,
                "must be IP addresses or networks, with commas between them, such as 10.0.0.7,192.168.3.0/24", TryParseNetwork),
            PublicUrl = (Url(reader, SettingNames.PublicUrl)?.ToString() ?? $"{(tls is null ? "http" : "https")}://{http}").TrimEnd('/'),
            Notice = reader.Text(SettingNames.Notice),
            Mail = ReadMail(reader, dataFolder),
            Schedule = ReadSchedule(reader),
            Retention = ReadRetention(reader),
            Access = ReadAccess(reader),
            LogLevel = reader.Value(SettingNames.LogLevel, LogLevel.Information,
                "must be trace, debug, information, warning, error, critical or none",
                (string text, out LogLevel value) => Enum.TryParse(text, ignoreCase: true, out value) && Enum.IsDefined(value) && !char.IsDigit(text[0])),
            OtlpEndpoint = Url(reader, SettingNames.OtlpEndpoint),
            UnknownNames = [.. configuration.AsEnumerable()
                .Select(pair => pair.Key)
                .Where(name => name.StartsWith("FLEETTREND_", StringComparison.OrdinalIgnoreCase)
                    && !name.StartsWith("FLEETTREND_TEST_", StringComparison.OrdinalIgnoreCase)
                    && !SettingNames.All.Contains(name, StringComparer.OrdinalIgnoreCase)
                    && !SettingNames.OfOthers.Contains(name, StringComparer.OrdinalIgnoreCase))
                .Distinct(StringComparer.OrdinalIgnoreCase)],
        };
        RefuseSharedPort(reader, settings);
        RefusePlainText(reader, SettingNames.GrpcAddress, settings.GrpcAddress, settings);
        RefusePlainText(reader, SettingNames.HttpAddress, settings.HttpAddress, settings);
        return reader.Errors.Count == 0 ? settings : throw new HostSettingsException(reader.Errors);
    }

    /// <summary>Without secrets.</summary>
    public override string ToString() =>
        $"gRPC {GrpcAddress}, HTTP {HttpAddress}, worker {WorkerAddress}, data {DataFolder}, "
        + (Database is null ? "local PostgreSQL, " : "given PostgreSQL, ") + (Tls?.ToString() ?? "no TLS");

    private static string? ReadDatabase(SettingReader reader)
    {
        if (reader.Text(SettingNames.Database) is not { } text)
            return null;
        try
        {
            var parts = new NpgsqlConnectionStringBuilder(text);
            if (string.IsNullOrEmpty(parts.Host) || string.IsNullOrEmpty(parts.Database))
                reader.RefuseSecret(SettingNames.Database, "must name Host and Database");
            return text;
        }
        catch (ArgumentException)
        {
            // The parser's message may repeat a part of the password.
            reader.RefuseSecret(SettingNames.Database,
                "must be an Npgsql connection string, such as Host=db;Database=fleettrend;Username=fleettrend;Password=...");
            return null;
        }
    }

    private static TlsSettings? ReadTls(SettingReader reader)
    {
        var keyFile = reader.Text(SettingNames.TlsKey);
        var password = reader.Text(SettingNames.TlsPassword);
        if (reader.Text(SettingNames.TlsCertificate) is not { } certificateFile)
        {
            if (keyFile is not null)
                reader.Refuse(SettingNames.TlsKey, keyFile, $"must be given together with {SettingNames.TlsCertificate}");
            if (password is not null)
                reader.RefuseSecret(SettingNames.TlsPassword, $"must be given together with {SettingNames.TlsCertificate}");
            return null;
        }

        var tls = new TlsSettings { CertificateFile = certificateFile, KeyFile = keyFile, Password = password };
        try
        {
            tls.Load().Own.Dispose();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or CryptographicException)
        {
            reader.Refuse(SettingNames.TlsCertificate, certificateFile,
                $"must be a PEM or PFX file with a certificate, its private key there or in {SettingNames.TlsKey}, which "
                + $"{SettingNames.TlsPassword} opens where it is closed. {e.Message.TrimEnd('.')}");
        }

        return tls;
    }

    private static AccessSettings ReadAccess(SettingReader reader)
    {
        var defaults = new AccessSettings();
        return new AccessSettings
        {
            CallsPerSecond = reader.Whole(SettingNames.CallsPerSecond, defaults.CallsPerSecond, 1, 1_000_000),
            CallsAtOnce = reader.Whole(SettingNames.CallsAtOnce, defaults.CallsAtOnce, 1, 10_000),
            RefusedCallsPerMinute = reader.Whole(SettingNames.RefusedCallsPerMinute, defaults.RefusedCallsPerMinute, 1, 1_000_000),
        };
    }

    private static MailSettings ReadMail(SettingReader reader, string dataFolder)
    {
        var host = reader.Text(SettingNames.SmtpHost);
        var user = reader.Text(SettingNames.SmtpUser);
        var password = reader.Text(SettingNames.SmtpPassword);
        if (user is null != password is null)
            reader.RefuseSecret(SettingNames.SmtpPassword, $"must be given together with {SettingNames.SmtpUser}");
        var smtp = new SmtpSettings
        {
            Host = host ?? "",
            Port = reader.Whole(SettingNames.SmtpPort, 587, 1, 65535),
            Security = reader.Value(SettingNames.SmtpSecurity, SmtpSecurity.StartTls, "must be starttls, tls or none",
                (string text, out SmtpSecurity value) =>
                    Enum.TryParse(text, ignoreCase: true, out value) && Enum.IsDefined(value) && !char.IsDigit(text[0])),
            User = user,
            Password = password,
        };
        return new MailSettings
        {
            Smtp = host is null ? null : smtp,
            Folder = reader.Text(SettingNames.MailFolder) ?? Path.Combine(dataFolder, "mail"),
            GiveUpAfter = TimeSpan.FromHours(reader.Whole(SettingNames.MailGiveUpHours, (int)new MailSettings().GiveUpAfter.TotalHours, 1, 720)),
            From = reader.Value(SettingNames.MailFrom, "fleettrend@localhost", "must be a mail address",
                (string text, out string value) =>
                {
                    value = text;
                    return MailAddress.TryCreate(text, out _);
                }),
        };
    }

    private static ScheduleSettings ReadSchedule(SettingReader reader)
    {
        var defaults = new ScheduleSettings();
        return new ScheduleSettings
        {
            TimeZone = reader.Value(SettingNames.TimeZone, defaults.TimeZone,
                "must be an IANA time zone that this machine knows, such as America/Chicago (Debian package tzdata)",
                (string text, out TimeZoneInfo zone) =>
                    TimeZoneInfo.TryFindSystemTimeZoneById(text, out zone!)),
            WeeklyReport = reader.Value<WeeklySlot>(SettingNames.WeeklyReport, defaults.WeeklyReport,
                "must be an English weekday and a 24-hour time, such as Monday 06:00", WeeklySlot.TryParse),
            NightlyRefresh = reader.Value(SettingNames.NightlyRefresh, defaults.NightlyRefresh,
                "must be a 24-hour time, such as 02:00",
                (string text, out TimeOnly time) => TimeOnly.TryParseExact(
                    text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out time)),
            RefreshDelay = TimeSpan.FromSeconds(reader.Whole(
                SettingNames.RefreshDelaySeconds, (int)defaults.RefreshDelay.TotalSeconds, 0, 3600)),
            LeastBetweenRefreshes = TimeSpan.FromSeconds(reader.Whole(
                SettingNames.RefreshLeastSeconds, (int)defaults.LeastBetweenRefreshes.TotalSeconds, 0, 3600)),
        };
    }

    private static RetentionSettings ReadRetention(SettingReader reader)
    {
        var defaults = new RetentionSettings();
        return new RetentionSettings
        {
            Snapshots = Days(SettingNames.KeepSnapshotsDays, defaults.Snapshots),
            Mails = Days(SettingNames.KeepMailsDays, defaults.Mails),
            Answered = Days(SettingNames.KeepAnsweredDays, defaults.Answered),
        };

        TimeSpan Days(string name, TimeSpan fallback) => TimeSpan.FromDays(reader.Whole(name, (int)fallback.TotalDays, 1, 36_500));
    }

    private static NetworkAddress Address(SettingReader reader, string name, int port) =>
        reader.Value<NetworkAddress>(name, NetworkAddress.Loopback(port),
            "must be host:port with an IP address, localhost or * as host, such as 127.0.0.1:5080",
            NetworkAddress.TryParse);

    private static bool TryParseHost(string text, out string host)
    {
        host = text;
        var name = text.StartsWith("*.", StringComparison.Ordinal) ? text[2..] : text;
        return text == "*" || (Uri.CheckHostName(name) == UriHostNameType.Dns && !name.StartsWith('*'));
    }

    private static bool TryParseNetwork(string text, out IPNetwork network)
    {
        if (IPNetwork.TryParse(text, out network))
            return true;
        if (!IPAddress.TryParse(text, out var address))
            return false;
        network = new IPNetwork(address, address.AddressFamily == AddressFamily.InterNetwork ? 32 : 128);
        return true;
    }

    private static Uri? Url(SettingReader reader, string name) =>
        reader.Value<Uri?>(name, null, "must be an absolute http or https URL",
            (string text, out Uri? url) => Uri.TryCreate(text, UriKind.Absolute, out url)
                && (url.Scheme == Uri.UriSchemeHttp || url.Scheme == Uri.UriSchemeHttps));

    /// <summary>Without TLS one port cannot serve both HTTP/2 and HTTP/1.1.</summary>
    private static void RefuseSharedPort(SettingReader reader, HostSettings settings)
    {
        if (settings.GrpcAddress.Port != 0 && settings.GrpcAddress.Port == settings.HttpAddress.Port && !settings.HasOnePort)
        {
            reader.Refuse(SettingNames.GrpcAddress, settings.GrpcAddress.ToString(),
                settings.Tls is null
                ? $"must have another port than {SettingNames.HttpAddress}; with TLS one port can serve both"
                : $"must be {SettingNames.HttpAddress} itself, or have another port");
        }
    }

    /// <summary>A key that crosses a network unencrypted is everybody's.</summary>
    private static void RefusePlainText(SettingReader reader, string name, NetworkAddress address, HostSettings settings)
    {
        if (settings.Tls is null && !settings.AllowPlainText && !address.IsLoopback)
        {
            reader.Refuse(name, address.ToString(),
                $"must be on the loopback interface as long as {SettingNames.TlsCertificate} names no certificate and "
                + $"{SettingNames.AllowPlainText} is not true");
        }
    }
}

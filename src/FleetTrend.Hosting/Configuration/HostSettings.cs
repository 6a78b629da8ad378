using System.Globalization;
using System.Net.Mail;
using Microsoft.Extensions.Configuration;
using Npgsql;

namespace FleetTrend.Hosting.Configuration;

/// <summary>What an operator can set, validated. Every property has a default that suits a small shop's one machine;
/// <see cref="SettingNames"/> lists the names, deploy/README.md describes them.</summary>
public sealed record HostSettings
{
    /// <summary>Npgsql connection string; null starts a local PostgreSQL in <see cref="DataFolder"/>. Secret.</summary>
    public string? Database { get; init; }

    /// <summary>Folder for the local PostgreSQL and the mailbox.</summary>
    public string DataFolder { get; init; } = "data";

    /// <summary>gRPC: HTTP/2 without TLS.</summary>
    public NetworkAddress GrpcAddress { get; init; } = NetworkAddress.Loopback(5081);

    /// <summary>Pages, JSON and health of the API: HTTP/1.1.</summary>
    public NetworkAddress HttpAddress { get; init; } = NetworkAddress.Loopback(5080);

    /// <summary>Health of the worker: HTTP/1.1.</summary>
    public NetworkAddress WorkerAddress { get; init; } = NetworkAddress.Loopback(5082);

    /// <summary>How people reach the pages, without a closing slash.</summary>
    public string PublicUrl { get; init; } = "http://127.0.0.1:5080";

    /// <summary>A line that stands first in every report, such as that the data are synthetic; null for none.</summary>
    public string? Notice { get; init; }

    /// <summary>Where reports go.</summary>
    public MailSettings Mail { get; init; } = new();

    /// <summary>When the worker does what.</summary>
    public ScheduleSettings Schedule { get; init; } = new();

    /// <summary>How much callers may ask of the API.</summary>
    public AccessSettings Access { get; init; } = new();

    /// <summary>OpenTelemetry collector (OTLP); null exports nothing.</summary>
    public Uri? OtlpEndpoint { get; init; }

    /// <summary>Names that begin with FLEETTREND_ and mean nothing: most likely misspelt.</summary>
    public IReadOnlyList<string> UnknownNames { get; init; } = [];

    /// <summary>Reads the settings of a host.</summary>
    /// <exception cref="HostSettingsException">Any setting breaks its rule; all are listed.</exception>
    public static HostSettings Read(IConfiguration configuration)
    {
        var reader = new SettingReader(configuration);
        var dataFolder = reader.Text(SettingNames.DataFolder) ?? "data";
        var http = Address(reader, SettingNames.HttpAddress, 5080);
        var settings = new HostSettings
        {
            Database = ReadDatabase(reader),
            DataFolder = dataFolder,
            GrpcAddress = Address(reader, SettingNames.GrpcAddress, 5081),
            HttpAddress = http,
            WorkerAddress = Address(reader, SettingNames.WorkerAddress, 5082),
            PublicUrl = (Url(reader, SettingNames.PublicUrl)?.ToString() ?? $"http://{http}").TrimEnd('/'),
            Notice = reader.Text(SettingNames.Notice),
            Mail = ReadMail(reader, dataFolder),
            Schedule = ReadSchedule(reader),
            OtlpEndpoint = Url(reader, SettingNames.OtlpEndpoint),
            UnknownNames = [.. configuration.AsEnumerable()
                .Select(pair => pair.Key)
                .Where(name => name.StartsWith("FLEETTREND_", StringComparison.OrdinalIgnoreCase)
                    && !name.StartsWith("FLEETTREND_TEST_", StringComparison.OrdinalIgnoreCase)
                    && !SettingNames.All.Contains(name, StringComparer.OrdinalIgnoreCase))
                .Distinct(StringComparer.OrdinalIgnoreCase)],
        };
        RefuseSharedPort(reader, settings);
        return reader.Errors.Count == 0 ? settings : throw new HostSettingsException(reader.Errors);
    }

    /// <summary>Without secrets.</summary>
    public override string ToString() =>
        $"gRPC {GrpcAddress}, HTTP {HttpAddress}, worker {WorkerAddress}, data {DataFolder}, "
        + (Database is null ? "local PostgreSQL" : "given PostgreSQL");

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
        };
    }

    private static NetworkAddress Address(SettingReader reader, string name, int port) =>
        reader.Value<NetworkAddress>(name, NetworkAddress.Loopback(port),
            "must be host:port with an IP address, localhost or * as host, such as 127.0.0.1:5080",
            NetworkAddress.TryParse);

    private static Uri? Url(SettingReader reader, string name) =>
        reader.Value<Uri?>(name, null, "must be an absolute http or https URL",
            (string text, out Uri? url) => Uri.TryCreate(text, UriKind.Absolute, out url)
                && (url.Scheme == Uri.UriSchemeHttp || url.Scheme == Uri.UriSchemeHttps));

    /// <summary>Without TLS one port cannot serve both HTTP/2 and HTTP/1.1.</summary>
    private static void RefuseSharedPort(SettingReader reader, HostSettings settings)
    {
        if (settings.GrpcAddress.Port != 0 && settings.GrpcAddress.Port == settings.HttpAddress.Port)
        {
            reader.Refuse(SettingNames.GrpcAddress, settings.GrpcAddress.ToString(),
                $"must have another port than {SettingNames.HttpAddress}");
        }
    }
}

using FleetTrend.Hosting.Configuration;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Logging;

namespace FleetTrend.Hosting.Tests.Configuration;

/// <summary>The rules are the product's own, as deploy/README.md states them.</summary>
public sealed class HostSettingsTests
{
    [Fact]
    public void Nothing_set_is_a_small_shop_on_one_machine()
    {
        var settings = Read();

        Assert.Null(settings.Database);
        Assert.Equal("127.0.0.1:5080", settings.HttpAddress.ToString());
        Assert.Equal("127.0.0.1:5081", settings.GrpcAddress.ToString());
        Assert.Equal("http://127.0.0.1:5080", settings.PublicUrl);
        Assert.Null(settings.Mail.Smtp);
        Assert.Equal(Path.Combine("data", "mail"), settings.Mail.Folder);
        Assert.Null(settings.OtlpEndpoint);
        Assert.Empty(settings.UnknownNames);
    }

    [Fact]
    public void Everything_set_is_read()
    {
        var settings = Read(
            (SettingNames.Database, "Host=db;Database=fleet;Username=u;Password=p"),
            (SettingNames.DataFolder, "/srv/fleet"),
            (SettingNames.GrpcAddress, "*:9001"),
            (SettingNames.HttpAddress, "[::1]:9000"),
            (SettingNames.WorkerAddress, "localhost:0"),
            (SettingNames.LocalAddress, "127.0.0.1:9002"),
            (SettingNames.AllowPlainText, "true"),
            (SettingNames.CallsPerSecond, "7"),
            (SettingNames.CallsAtOnce, "8"),
            (SettingNames.RefusedCallsPerMinute, "9"),
            (SettingNames.PublicUrl, "https://trend.example.org/"),
            (SettingNames.MailFrom, "trend@example.org"),
            (SettingNames.SmtpHost, "mail.example.org"),
            (SettingNames.SmtpPort, "465"),
            (SettingNames.SmtpSecurity, "tls"),
            (SettingNames.SmtpUser, "trend"),
            (SettingNames.SmtpPassword, "secret"),
            (SettingNames.TimeZone, "UTC"),
            (SettingNames.WeeklyReport, "friday 17:30"),
            (SettingNames.NightlyRefresh, "03:15"),
            (SettingNames.RefreshDelaySeconds, "5"),
            (SettingNames.AllowedHosts, "alias.example.org, *.shop.example"),
            (SettingNames.TrustedProxies, "10.0.0.7, 192.168.3.0/24, 2001:db8::7"),
            (SettingNames.LogLevel, "Warning"),
            (SettingNames.OtlpEndpoint, "http://collector:4317"));

        Assert.Equal("0.0.0.0:9001", settings.GrpcAddress.ToString());
        Assert.Equal("127.0.0.1:9002", settings.LocalAddress?.ToString());
        Assert.Equal((7, 8, 9), (settings.Access.CallsPerSecond, settings.Access.CallsAtOnce, settings.Access.RefusedCallsPerMinute));
        Assert.Equal("[::1]:9000", settings.HttpAddress.ToString());
        Assert.Equal("https://trend.example.org", settings.PublicUrl);
        Assert.Equal("mail.example.org:465 (Tls)", settings.Mail.Smtp?.ToString());
        Assert.Equal("/srv/fleet/mail", settings.Mail.Folder);
        Assert.Equal("Friday 17:30", settings.Schedule.WeeklyReport.ToString());
        Assert.Equal(new TimeOnly(3, 15), settings.Schedule.NightlyRefresh);
        Assert.Equal(TimeSpan.FromSeconds(5), settings.Schedule.RefreshDelay);
        Assert.Equal(new Uri("http://collector:4317"), settings.OtlpEndpoint);
        Assert.Equal(["alias.example.org", "*.shop.example"], settings.AllowedHosts);
        Assert.Equal(["10.0.0.7/32", "192.168.3.0/24", "2001:db8::7/128"], settings.TrustedProxies.Select(proxy => proxy.ToString()));
        Assert.Equal(LogLevel.Warning, settings.LogLevel);
    }

    [Theory]
    [InlineData(SettingNames.GrpcAddress, "5081")]
    [InlineData(SettingNames.GrpcAddress, "host.example.org:5081")]
    [InlineData(SettingNames.HttpAddress, "127.0.0.1:70000")]
    [InlineData(SettingNames.WorkerAddress, "127.0.0.1:-1")]
    [InlineData(SettingNames.PublicUrl, "trend.example.org")]
    [InlineData(SettingNames.MailFrom, "nobody")]
    [InlineData(SettingNames.SmtpPort, "0")]
    [InlineData(SettingNames.SmtpSecurity, "ssl3")]
    [InlineData(SettingNames.SmtpSecurity, "1")]
    [InlineData(SettingNames.TimeZone, "Mars/Olympus")]
    [InlineData(SettingNames.WeeklyReport, "Monday")]
    [InlineData(SettingNames.WeeklyReport, "8 06:00")]
    [InlineData(SettingNames.NightlyRefresh, "25:00")]
    [InlineData(SettingNames.RefreshDelaySeconds, "3601")]
    [InlineData(SettingNames.OtlpEndpoint, "ftp://collector")]
    [InlineData(SettingNames.GrpcAddress, "0.0.0.0:5081")] // plain text for other machines
    [InlineData(SettingNames.HttpAddress, "10.1.2.3:5080")]
    [InlineData(SettingNames.HttpAddress, "[2001:db8::1]:5080")]
    [InlineData(SettingNames.AllowPlainText, "yes")]
    [InlineData(SettingNames.LocalAddress, "*:5083")]
    [InlineData(SettingNames.TlsCertificate, "/nowhere/certificate.pem")]
    [InlineData(SettingNames.TlsCertificate, "/nowhere/certificate.pfx")]
    [InlineData(SettingNames.TlsKey, "key.pem")]
    [InlineData(SettingNames.CallsPerSecond, "0")]
    [InlineData(SettingNames.CallsAtOnce, "10001")]
    [InlineData(SettingNames.RefusedCallsPerMinute, "-1")]
    [InlineData(SettingNames.AllowedHosts, "trend.example.org:5080")]
    [InlineData(SettingNames.AllowedHosts, "https://trend.example.org")]
    [InlineData(SettingNames.AllowedHosts, "trend.example.org,*.*.example")]
    [InlineData(SettingNames.AllowedHosts, ",")]
    [InlineData(SettingNames.TrustedProxies, "proxy.example.org")]
    [InlineData(SettingNames.TrustedProxies, "10.0.0.7,10.0.0.0/33")]
    [InlineData(SettingNames.LogLevel, "chatty")]
    [InlineData(SettingNames.LogLevel, "2")]
    public void A_broken_setting_is_named_with_its_value_and_its_rule(string name, string value)
    {
        var error = Assert.Throws<HostSettingsException>(() => Read((name, value)));

        var only = Assert.Single(error.Errors);
        Assert.Equal(name, only.Name);
        Assert.Equal(value, only.Value);
        Assert.StartsWith("must ", only.Rule, StringComparison.Ordinal);
    }

    [Fact]
    public void All_broken_settings_are_reported_at_once()
    {
        var error = Assert.Throws<HostSettingsException>(
            () => Read((SettingNames.SmtpPort, "x"), (SettingNames.TimeZone, "y")));

        Assert.Equal([SettingNames.SmtpPort, SettingNames.TimeZone], error.Errors.Select(e => e.Name));
    }

    [Theory]
    [InlineData("Host=db;Password=hunter2")] // no database
    [InlineData("Host=db;Database=d;Pasword=hunter2")] // misspelt keyword
    public void A_broken_connection_string_is_never_repeated(string value)
    {
        var error = Assert.Throws<HostSettingsException>(() => Read((SettingNames.Database, value)));

        Assert.Contains(SettingNames.Database, error.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("hunter2", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Printed_settings_hold_no_secret()
    {
        var settings = Read(
            (SettingNames.Database, "Host=db;Database=d;Password=hunter2"), (SettingNames.SmtpHost, "m"),
            (SettingNames.SmtpUser, "u"), (SettingNames.SmtpPassword, "hunter3"));

        Assert.DoesNotContain("hunter", $"{settings} {settings.Mail} {settings.Mail.Smtp}", StringComparison.Ordinal);
    }

    [Fact]
    public void A_user_without_a_password_is_refused()
    {
        var error = Assert.Throws<HostSettingsException>(
            () => Read((SettingNames.SmtpHost, "m"), (SettingNames.SmtpUser, "u")));

        Assert.Equal(SettingNames.SmtpPassword, Assert.Single(error.Errors).Name);
    }

    [Fact]
    public void One_port_for_gRPC_and_HTTP_is_refused_because_it_cannot_work_without_TLS()
    {
        var error = Assert.Throws<HostSettingsException>(() => Read((SettingNames.GrpcAddress, "127.0.0.1:5080")));

        Assert.Equal(SettingNames.GrpcAddress, Assert.Single(error.Errors).Name);
    }

    [Fact]
    public void A_misspelt_name_is_noticed()
    {
        var settings = Read(("FLEETTREND_SMPT_HOST", "m"));

        Assert.Equal(["FLEETTREND_SMPT_HOST"], settings.UnknownNames);
    }

    [Fact]
    public void Names_of_programs_beside_the_host_are_no_misspellings()
    {
        var settings = Read(("FLEETTREND_KEY", "ftk_abcdefghijkl_x"), ("FLEETTREND_DB_PASSWORD", "p"));

        Assert.Empty(settings.UnknownNames);
    }

    [Theory]
    [InlineData("0", 0)]
    [InlineData("86400", 86_400)]
    public void The_wait_for_the_database_is_bounded(string told, int seconds) =>
        Assert.Equal(TimeSpan.FromSeconds(seconds), Read((SettingNames.DatabaseWaitSeconds, told)).DatabaseWait);

    [Fact]
    public void A_wait_without_bound_is_refused()
    {
        var error = Assert.Throws<HostSettingsException>(() => Read((SettingNames.DatabaseWaitSeconds, "86401")));

        Assert.Equal(SettingNames.DatabaseWaitSeconds, Assert.Single(error.Errors).Name);
    }

    private static HostSettings Read(params (string Name, string Value)[] settings) => HostSettings.Read(
        new ConfigurationBuilder()
            .AddInMemoryCollection(settings.Select(s => new KeyValuePair<string, string?>(s.Name, s.Value)))
            .Build());
}

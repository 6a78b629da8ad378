using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text.Json;
using FleetTrend.Cli.Commands;
using FleetTrend.Cli.SendTest;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Store.Keys;

namespace FleetTrend.IntegrationTests.CommandLine;

/// <summary>fleettrend send-test: the first thing that is wrong is the one that it names.</summary>
[Collection(SharedPostgres.Name)]
public sealed class SendTestTests(PostgresFixture postgres) : IAsyncLifetime, IDisposable
{
    private readonly CsvFolder folder = new();
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task All_in_order_ends_with_0_and_stores_nothing()
    {
        await ShopCards.RegisterAsync(server);
        var (code, checks) = await TestAsync(server.GrpcAddress, server.Key, ShopCards.Source);
        Assert.Equal(0, code);
        Assert.Equal(["name", "connection", "key", "scope", "source", "clock", "record"], checks.Select(c => c.Check));
        Assert.All(checks, c => Assert.Equal("passed", c.Verdict));
        await using var count = server.Database.DataSource.CreateCommand("select count(*) from records");
        Assert.Equal(0L, await count.ExecuteScalarAsync());
    }

    [Theory]
    [InlineData(+2, "ahead of")]
    [InlineData(-2, "behind")]
    public async Task A_clock_that_is_wrong_is_told_in_the_direction_in_which_it_is(int hours, string direction)
    {
        var clock = await ClockOfAsync(new ShiftedClock(TimeSpan.FromHours(hours)));
        Assert.Equal(Verdict.Warned, clock.Verdict);
        Assert.Matches($@"^(7[12]\d\d) s {direction} the server's; (7[12]\d\d) s {direction} its database's$", clock.Found);
    }

    [Fact] // Sender and server on one machine agree in every case; the day of records is the database's.
    public async Task A_database_whose_clock_is_another_is_told_though_the_server_has_ours()
    {
        await using (var ahead = server.Database.DataSource.CreateCommand(
            "insert into knowledge (id, last_as_of) values (1, clock_timestamp() + interval '2 hours') on conflict (id) do update set last_as_of = excluded.last_as_of"))
        {
            await ahead.ExecuteNonQueryAsync();
        }

        var clock = await ClockOfAsync(TimeProvider.System);
        Assert.Equal(Verdict.Warned, clock.Verdict);
        Assert.Matches(@"^same as the server's; 7[12]\d\d s behind its database's$", clock.Found);
    }

    [Fact]
    public async Task A_right_clock_is_said_to_be_right()
    {
        var clock = await ClockOfAsync(TimeProvider.System);
        Assert.Equal((Verdict.Passed, "same as the server's; same as its database's"), (clock.Verdict, clock.Found));
    }

    [Theory] // By hand: 10:00:00 to 10:00:10 on ours, the other says 10:00:04 (.0 to .999).
    [InlineData(0, 10, 4, 0)] // both may show the same
    [InlineData(0, 10, 11, -1)] // 11 at our 10 at the latest
    [InlineData(0, 10, -3, 2)] // -2.001 at our 0 at the earliest
    public void A_slow_answer_is_no_difference(int asked, int answered, int theirs, int ahead)
    {
        var start = new DateTimeOffset(2026, 2, 3, 10, 0, 0, TimeSpan.Zero);
        var reading = new ClockReading(start.AddSeconds(asked), start.AddSeconds(answered), start.AddSeconds(theirs), TimeSpan.FromSeconds(1));
        Assert.Equal(TimeSpan.FromSeconds(ahead), reading.Ahead);
    }

    [Fact]
    public async Task Without_a_type_group_the_record_is_not_tried_and_that_is_said()
    {
        var (code, checks) = await TestAsync(server.GrpcAddress, server.Key);
        Assert.Equal((0, "record", "warned"), (code, checks[^1].Check, checks[^1].Verdict));
    }

    [Fact]
    public async Task No_key_an_unknown_and_a_revoked_one_end_with_4()
    {
        var revoked = await server.CreateKeyAsync(ShopCards.Source, KeyScope.RecordsWrite);
        await server.Access.RevokeKeyAsync(new Contracts.V1.RevokeKeyRequest { KeyId = revoked.Split('_')[1] });
        foreach (var (key, reason) in new[] { ("", "KEY_REQUIRED"), ("ftk_aaaaaaaaaaaa_b", "KEY_UNKNOWN"), (revoked, "KEY_REVOKED") })
            await AssertFailsAsync(server.GrpcAddress, key, 4, "key", reason);
    }

    [Fact]
    public async Task A_key_that_may_not_push_or_pushes_for_another_source_ends_with_4()
    {
        await AssertFailsAsync(server.GrpcAddress, await server.CreateKeyAsync(ShopCards.Source, KeyScope.TrendsRead), 4, "scope", "TrendsRead");
        await AssertFailsAsync(server.GrpcAddress, server.Key, 4, "source", "belongs to shop-cards", "another-shop");
    }

    [Fact]
    public async Task What_is_not_reached_ends_with_3_and_the_step_is_named()
    {
        await AssertFailsAsync(new Uri("https://no-such-host.invalid:5081"), server.Key, 3, "name", "no-such-host.invalid"); // RFC 2606: never resolves
        await AssertFailsAsync(new Uri("http://127.0.0.1:1"), server.Key, 3, "connection", "refuses");
        await AssertFailsAsync(server.HttpAddress, server.Key, 3, "gRPC", "");
        await AssertFailsAsync(new UriBuilder(server.GrpcAddress) { Scheme = "https" }.Uri, server.Key, 3, "TLS", "");
    }

    [Fact]
    public async Task A_certificate_that_is_not_trusted_is_named_and_its_root_helps()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=synthetic", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddIpAddress(IPAddress.Loopback);
        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        using var made = request.CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(7));
        using var certificate = X509CertificateLoader.LoadPkcs12(made.Export(X509ContentType.Pfx), null);
        File.WriteAllText(folder.PathTo("root.pem"), certificate.ExportCertificatePem());
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var serving = ServeTlsAsync(listener, certificate);
        var address = new Uri($"https://{listener.LocalEndpoint}");

        await AssertFailsAsync(address, server.Key, 3, "TLS", "RemoteCertificateChainErrors");
        var (_, checks) = await TestAsync(address, server.Key, root: folder.PathTo("root.pem"));
        Assert.Equal("warned", checks.Single(c => c.Check == "TLS").Verdict); // it ends within 30 days
        listener.Stop();
        await serving;
    }

    [Fact]
    public async Task A_file_that_cannot_be_read_ends_with_2()
    {
        using var error = new StringWriter();
        var settings = new SendTestCommand.Settings { Address = "http://127.0.0.1:1", KeyFile = folder.PathTo("missing") };
        Assert.Equal(2, await SendTestCommand.RunAsync(settings, TextWriter.Null, error));
        Assert.Contains("missing", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task For_people_it_says_what_to_do_and_never_shows_the_key()
    {
        using var output = new StringWriter();
        File.WriteAllText(folder.PathTo("key"), "ftk_aaaaaaaaaaaa_secretpart");
        var settings = new SendTestCommand.Settings { Address = server.GrpcAddress.ToString(), KeyFile = folder.PathTo("key") };
        await SendTestCommand.RunAsync(settings, output, TextWriter.Null);
        Assert.Contains("FAILED key", output.ToString(), StringComparison.Ordinal);
        Assert.Contains("fleettrend keys create", output.ToString().ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.EndsWith("Records cannot be sent yet.\n", output.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("secretpart", output.ToString(), StringComparison.Ordinal);
    }

    private static async Task ServeTlsAsync(TcpListener listener, X509Certificate2 certificate)
    {
        try
        {
            while (true)
            {
                using var client = await listener.AcceptTcpClientAsync();
                await using var tls = new SslStream(client.GetStream());
                try
                {
                    await tls.AuthenticateAsServerAsync(
                        new SslServerAuthenticationOptions { ServerCertificate = certificate, ApplicationProtocols = [SslApplicationProtocol.Http2] });
                }
                catch (Exception left) when (left is IOException or System.Security.Authentication.AuthenticationException)
                {
                    // The client did not trust the certificate, which is what the test wants.
                }
            }
        }
        catch (SocketException)
        {
            // The test is over.
        }
    }

    private async Task<Check> ClockOfAsync(TimeProvider clock)
    {
        await foreach (var check in new CallChecks(server.Channel, hasKey: true, clock).RunAsync(ShopCards.Source))
        {
            if (check.Name == "clock")
                return check;
        }

        throw new InvalidOperationException("No clock was looked at.");
    }

    private async Task AssertFailsAsync(Uri address, string key, int code, string check, string words, string source = "")
    {
        var (actual, checks) = await TestAsync(address, key, source);
        var failed = checks.First(c => c.Verdict == "failed");
        Assert.Equal((check, code), (failed.Check, actual));
        Assert.Contains(words, failed.Found, StringComparison.Ordinal);
        Assert.NotEmpty(failed.Advice);
    }

    private async Task<(int Code, IReadOnlyList<Line> Checks)> TestAsync(Uri address, string key, string source = "", string? root = null)
    {
        using var output = new StringWriter();
        File.WriteAllText(folder.PathTo("key"), key);
        var settings = new SendTestCommand.Settings
        {
            Address = address.ToString(),
            KeyFile = key.Length > 0 ? folder.PathTo("key") : null,
            Source = source,
            RootCertificate = root,
            Json = true,
        };
        var code = await SendTestCommand.RunAsync(settings, output, TextWriter.Null);
        var checks = JsonDocument.Parse(output.ToString()).RootElement.GetProperty("checks");
        return (code, checks.Deserialize<List<Line>>(JsonSerializerOptions.Web)!);
    }

    private sealed class ShiftedClock(TimeSpan by) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + by;
    }

    private sealed record Line(string Check, string Verdict, string Found, string Advice);
}

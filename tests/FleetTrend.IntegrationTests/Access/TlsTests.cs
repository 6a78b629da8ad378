using System.Net;
using System.Security.Authentication;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using FleetTrend.Contracts.V1;
using FleetTrend.Hosting.Configuration;
using Microsoft.Extensions.Configuration;

namespace FleetTrend.IntegrationTests.Access;

/// <summary>With a certificate one port serves gRPC and JSON, and nothing in plain text. The certificate is made here.</summary>
[Collection(SharedPostgres.Name)]
public sealed class TlsTests : IDisposable
{
    private const string Password = "correct horse battery staple";

    private readonly PostgresFixture postgres;
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("fleettrend-tls-");
    private readonly X509Certificate2 certificate;

    public TlsTests(PostgresFixture postgres)
    {
        this.postgres = postgres;
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=fleettrend.test", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddIpAddress(IPAddress.Loopback);
        request.CertificateExtensions.Add(names.Build());
        certificate = request.CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(2));
        File.WriteAllText(InFolder("certificate.pem"), certificate.ExportCertificatePem());
        File.WriteAllText(InFolder("key.pem"), key.ExportPkcs8PrivateKeyPem());
        File.WriteAllText(InFolder("closed.pem"), key.ExportEncryptedPkcs8PrivateKeyPem(
            Password, new PbeParameters(PbeEncryptionAlgorithm.Aes256Cbc, HashAlgorithmName.SHA256, 10_000)));
        File.WriteAllText(InFolder("both.pem"), certificate.ExportCertificatePem() + "\n" + key.ExportPkcs8PrivateKeyPem());
        File.WriteAllBytes(InFolder("both.pfx"), certificate.Export(X509ContentType.Pkcs12, Password));
    }

    public void Dispose()
    {
        certificate.Dispose();
        folder.Delete(recursive: true);
    }

    [Theory]
    [InlineData("certificate.pem", "key.pem", null)]
    [InlineData("certificate.pem", "closed.pem", Password)]
    [InlineData("both.pem", null, null)]
    [InlineData("both.pfx", null, Password)]
    public async Task One_port_serves_gRPC_and_JSON(string certificate, string? key, string? password)
    {
        var tls = Read(certificate, key, password).Tls;
        await using var server = await ApiServer.StartAsync(postgres, settings => settings with { Tls = tls }, trust: this.certificate);

        Assert.Equal(server.GrpcAddress, server.HttpAddress);
        Assert.Equal("https", server.GrpcAddress.Scheme);
        var own = await server.Access.GetOwnKeyAsync(new GetOwnKeyRequest());
        var overJson = await server.Http.GetStringAsync("v1/keys:own");
        Assert.Contains(own.Key.KeyId, overJson, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_is_served_in_plain_text_or_to_who_does_not_trust_the_certificate()
    {
        var tls = Read("certificate.pem", "key.pem", null).Tls;
        await using var server = await ApiServer.StartAsync(postgres, settings => settings with { Tls = tls }, trust: certificate);

        using var stranger = new HttpClient();
        var untrusted = await Assert.ThrowsAsync<HttpRequestException>(() => stranger.GetAsync(new Uri(server.HttpAddress, "health/live")));
        Assert.IsType<AuthenticationException>(untrusted.InnerException);
        var plain = new UriBuilder(server.HttpAddress) { Scheme = "http", Path = "health/live" }.Uri;
        await Assert.ThrowsAsync<HttpRequestException>(() => stranger.GetAsync(plain));
    }

    [Fact]
    public async Task Health_checks_of_the_same_machine_have_an_address_without_TLS()
    {
        var tls = Read("certificate.pem", "key.pem", null).Tls;
        await using var server = await ApiServer.StartAsync(
            postgres, settings => settings with { Tls = tls, LocalAddress = NetworkAddress.Loopback(0) }, trust: certificate);

        Assert.Equal("http", server.LocalAddress!.Scheme);
        using var http = new HttpClient();
        using var answer = await http.GetAsync(new Uri(server.LocalAddress, "health/ready"));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Theory]
    [InlineData("certificate.pem", null, null)] // no private key
    [InlineData("key.pem", "key.pem", null)] // no certificate
    [InlineData("certificate.pem", "closed.pem", "hunter2")] // another password
    [InlineData("both.pfx", null, "hunter2")]
    public void A_certificate_that_cannot_be_used_is_named_without_the_password(string certificate, string? key, string? password)
    {
        var refusal = Assert.Throws<HostSettingsException>(() => Read(certificate, key, password));

        var only = Assert.Single(refusal.Errors);
        Assert.Equal((SettingNames.TlsCertificate, InFolder(certificate)), (only.Name, only.Value));
        Assert.DoesNotContain("hunter2", refusal.ToString(), StringComparison.Ordinal);
    }

    private string InFolder(string name) => Path.Combine(folder.FullName, name);

    private HostSettings Read(string certificate, string? key, string? password) => HostSettings.Read(new ConfigurationBuilder()
        .AddInMemoryCollection(new Dictionary<string, string?>(StringComparer.Ordinal)
        {
            [SettingNames.TlsCertificate] = InFolder(certificate),
            [SettingNames.TlsKey] = key is null ? null : InFolder(key),
            [SettingNames.TlsPassword] = password,
        })
        .Build());
}

using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using FleetTrend.Contracts.V1;

namespace FleetTrend.Client.Tests;

/// <summary>Who is called, who is trusted, and what goes along.</summary>
public sealed class FleetTrendChannelTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("channel").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task The_key_goes_along_as_bearer_and_the_own_root_is_trusted()
    {
        using var certificate = Certificate();
        var rootFile = Path.Combine(folder, "root.pem");
        await File.WriteAllTextAsync(rootFile, certificate.ExportCertificatePem());
        await using var server = await ScriptedServer.StartAsync(certificate, ScriptedServer.AcknowledgeAllAsync);
        var options = new ConnectionOptions { Address = server.Address, Key = "ftk_a_b", RootCertificateFile = rootFile };

        Assert.Equal(1, await CountAsync(options));
        Assert.Equal("Bearer ftk_a_b", Assert.Single(server.Played.Authorization));
    }

    [Fact]
    public async Task A_root_that_is_not_trusted_ends_the_push()
    {
        using var certificate = Certificate();
        await using var server = await ScriptedServer.StartAsync(certificate, ScriptedServer.AcknowledgeAllAsync);

        var stopped = await Assert.ThrowsAsync<PushStoppedException>(() => CountAsync(new ConnectionOptions { Address = server.Address }));

        Assert.Contains("certificate", stopped.InnerException!.ToString(), StringComparison.OrdinalIgnoreCase);
        Assert.Empty(server.Played.Authorization);
    }

    [Fact]
    public async Task Without_a_key_no_header_goes_along()
    {
        await using var server = await ScriptedServer.StartAsync(ScriptedServer.AcknowledgeAllAsync);
        Assert.Equal(1, await CountAsync(new ConnectionOptions { Address = server.Address }));
        Assert.Null(Assert.Single(server.Played.Authorization));
    }

    [Theory]
    [InlineData("ftp://127.0.0.1", null, null, "https://")]
    [InlineData("http://192.0.2.1:5081", "ftk_a_b", null, "without TLS")]
    [InlineData("http://127.0.0.1:5081", "two words", null, "without spaces")]
    [InlineData("https://127.0.0.1:5081", "", null, "printable")]
    [InlineData("https://127.0.0.1:5081", null, "missing.pem", "missing.pem")]
    public void What_cannot_work_is_refused_before_anything_is_sent(string address, string? key, string? rootFile, string words)
    {
        var options = new ConnectionOptions { Address = new Uri(address), Key = key, RootCertificateFile = rootFile };
        Assert.Contains(words, Assert.ThrowsAny<ArgumentException>(() => FleetTrendChannel.Open(options)).Message, StringComparison.Ordinal);
    }

    private static async Task<int> CountAsync(ConnectionOptions options)
    {
        using var channel = FleetTrendChannel.Open(options);
        var push = new PushOptions { FirstPause = TimeSpan.FromMilliseconds(1), GiveUpAfter = TimeSpan.Zero };
        var record = new Record { Key = new RecordKey { Source = "shop", SourceRecordId = "r" } };
        return await new RecordPusher(channel, push).PushAsync(new[] { record }.ToAsyncEnumerable()).CountAsync();
    }

    /// <summary>Signs itself, for the loopback address, until tomorrow.</summary>
    private static X509Certificate2 Certificate()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=synthetic", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddIpAddress(IPAddress.Loopback);
        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        using var made = request.CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(1));
        return X509CertificateLoader.LoadPkcs12(made.Export(X509ContentType.Pfx), null);
    }
}

using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace FleetTrend.Cli.SendTest;

/// <summary>Name, connection and TLS, one after the other, so that the first that fails is named and not the last.</summary>
internal static class WireChecks
{
    private const int DaysOfWarning = 30;

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    /// <summary>Runs them; ends with the first that fails.</summary>
    public static async IAsyncEnumerable<Check> RunAsync(Uri address, string? rootCertificate)
    {
        var (name, addresses) = await ResolveAsync(address);
        yield return name;
        if (name.Verdict == Verdict.Failed)
            yield break;
        var (connection, client) = await ConnectAsync(address, addresses);
        using (client)
        {
            yield return connection;
            if (client is not null && address.Scheme == Uri.UriSchemeHttps)
                yield return await HandshakeAsync(address, client, rootCertificate);
            else if (client is not null && !address.IsLoopback)
                yield return new Check("TLS", Verdict.Warned, "none", "Records and the key travel for everyone on the way to read. Have the server listen with TLS.");
        }
    }

    private static async Task<(Check Check, IPAddress[] Addresses)> ResolveAsync(Uri address)
    {
        try
        {
            using var limit = new CancellationTokenSource(Patience);
            var addresses = await Dns.GetHostAddressesAsync(address.IdnHost.Trim('[', ']'), limit.Token);
            return (Check.Passed("name", string.Join(", ", addresses.Select(a => a.ToString()))), addresses);
        }
        catch (Exception unknown) when (unknown is SocketException or OperationCanceledException)
        {
            return (Check.Failed("name", $"{address.Host} is not known: {unknown.Message}", "Check the spelling, and whether this machine asks the right name server."), []);
        }
    }

    private static async Task<(Check Check, TcpClient? Client)> ConnectAsync(Uri address, IPAddress[] addresses)
    {
        var client = new TcpClient();
        try
        {
            using var limit = new CancellationTokenSource(Patience);
            await client.ConnectAsync(addresses, address.Port, limit.Token);
            return (Check.Passed("connection", $"{client.Client.RemoteEndPoint}"), client);
        }
        catch (Exception unreachable) when (unreachable is SocketException or OperationCanceledException)
        {
            client.Dispose();
            var refused = unreachable is SocketException { SocketErrorCode: SocketError.ConnectionRefused };
            return refused
                ? (Check.Failed("connection", $"port {address.Port} refuses", "Nothing listens there: check the port (gRPC has its own), and that the server runs and listens to more than its own machine."), null)
                : (Check.Failed("connection", $"no answer from port {address.Port}: {unreachable.Message}", "A firewall or a route stands between: ask whoever runs the network."), null);
        }
    }

    private static async Task<Check> HandshakeAsync(Uri address, TcpClient client, string? rootCertificate)
    {
        var errors = SslPolicyErrors.None;
        var chainSays = "";
        await using var tls = new SslStream(client.GetStream());
        try
        {
            var options = new SslClientAuthenticationOptions
            {
                TargetHost = address.IdnHost,
                ApplicationProtocols = [SslApplicationProtocol.Http2],
                CertificateChainPolicy = rootCertificate is null ? null : Trust(rootCertificate),
                RemoteCertificateValidationCallback = (_, _, chain, found) =>
                {
                    errors = found;
                    chainSays = string.Join(" ", chain?.ChainStatus.Select(s => s.StatusInformation.Trim()) ?? []);
                    return found == SslPolicyErrors.None;
                },
            };
            using var limit = new CancellationTokenSource(Patience);
            await tls.AuthenticateAsClientAsync(options, limit.Token);
        }
        catch (Exception broken) when (broken is AuthenticationException or IOException or OperationCanceledException or CryptographicException)
        {
            return errors == SslPolicyErrors.None
                ? Check.Failed("TLS", broken.Message, "Perhaps the server listens without TLS there: try http://. Or the certificate file cannot be read.")
                : Check.Failed("TLS", $"{errors}: {chainSays}", Advice(errors, address.Host));
        }

        using var certificate = X509CertificateLoader.LoadCertificate(tls.RemoteCertificate!.GetRawCertData());
        var ends = certificate.NotAfter.ToUniversalTime();
        var verdict = ends < DateTime.UtcNow.AddDays(DaysOfWarning) ? Verdict.Warned : Verdict.Passed;
        if (tls.NegotiatedApplicationProtocol != SslApplicationProtocol.Http2)
            return Check.Failed("TLS", "the server does not speak HTTP/2 there", "gRPC needs HTTP/2: check the port, and any proxy between.");
        return new Check("TLS", verdict, $"{tls.SslProtocol}, certificate until {ends:yyyy-MM-dd}", verdict == Verdict.Warned ? "The certificate ends soon: tell whoever runs the server." : "");
    }

    private static string Advice(SslPolicyErrors errors, string host) => errors.HasFlag(SslPolicyErrors.RemoteCertificateNameMismatch)
        ? $"The certificate is not for {host}: use the name that it was made for."
        : "The certificate is not trusted or is out of date: give the root with --root-certificate, or have the server renew it.";

    private static X509ChainPolicy Trust(string file)
    {
        var policy = new X509ChainPolicy { TrustMode = X509ChainTrustMode.CustomRootTrust, RevocationMode = X509RevocationMode.NoCheck };
        policy.CustomTrustStore.ImportFromPemFile(file);
        return policy;
    }
}

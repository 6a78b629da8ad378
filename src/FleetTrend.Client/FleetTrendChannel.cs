using System.Net.Security;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Grpc.Core;
using Grpc.Net.Client;

namespace FleetTrend.Client;

/// <summary>Opens channels to a FleetTrend server; any client of the contract can be made on one.</summary>
public static class FleetTrendChannel
{
    // A connection that died without a word is noticed after their sum.
    private static readonly TimeSpan PingAfter = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan PingLimit = TimeSpan.FromSeconds(20);

    /// <summary>Opens a channel; it connects at the first call.</summary>
    /// <param name="options">Where and who.</param>
    /// <exception cref="ArgumentException">
    /// The address is not http or https, the key would travel unencrypted to another machine or has characters that no key
    /// has, or the certificate file cannot be read.
    /// </exception>
    public static GrpcChannel Open(ConnectionOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var encrypted = options.Address.Scheme == Uri.UriSchemeHttps;
        if (!encrypted && options.Address.Scheme != Uri.UriSchemeHttp)
            throw new ArgumentException($"address '{options.Address}': must begin with https:// or http://", nameof(options));
        if (options.Key is not null)
            CheckKey(options, encrypted);

        var handler = new SocketsHttpHandler
        {
            ConnectTimeout = options.ConnectLimit,
            KeepAlivePingDelay = PingAfter,
            KeepAlivePingTimeout = PingLimit,
            EnableMultipleHttp2Connections = true,
        };
        if (options.RootCertificateFile is { } file)
            handler.SslOptions = new SslClientAuthenticationOptions { CertificateChainPolicy = Trust(file) };
        var transport = encrypted ? ChannelCredentials.SecureSsl : ChannelCredentials.Insecure;
        return GrpcChannel.ForAddress(options.Address, new GrpcChannelOptions
        {
            HttpHandler = handler,
            DisposeHttpClient = true,
            UnsafeUseInsecureChannelCallCredentials = !encrypted,
            Credentials = options.Key is { } key ? ChannelCredentials.Create(transport, Bearer(key)) : transport,
        });
    }

    private static void CheckKey(ConnectionOptions options, bool encrypted)
    {
        if (!encrypted && !options.Address.IsLoopback && !options.AllowKeyWithoutTls)
        {
            throw new ArgumentException(
                $"address '{options.Address}': a key is not sent without TLS to another machine; use https://", nameof(options));
        }

        if (options.Key!.Length == 0 || options.Key.Any(c => c is <= ' ' or > '~'))
            throw new ArgumentException("key: must be printable ASCII characters without spaces", nameof(options));
    }

    private static CallCredentials Bearer(string key) => CallCredentials.FromInterceptor((_, metadata) =>
    {
        metadata.Add("authorization", $"Bearer {key}");
        return Task.CompletedTask;
    });

    private static X509ChainPolicy Trust(string file)
    {
        var policy = new X509ChainPolicy { TrustMode = X509ChainTrustMode.CustomRootTrust, RevocationMode = X509RevocationMode.NoCheck };
        try
        {
            policy.CustomTrustStore.ImportFromPemFile(file);
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException or CryptographicException)
        {
            throw new ArgumentException($"certificate file '{file}': {unreadable.Message}", nameof(file), unreadable);
        }

        return policy.CustomTrustStore.Count > 0
            ? policy
            : throw new ArgumentException($"certificate file '{file}': holds no certificate in PEM form", nameof(file));
    }
}

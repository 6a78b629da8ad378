using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace FleetTrend.Hosting.Configuration;

/// <summary>Where a host listens.</summary>
public static class KestrelEndpoints
{
    /// <summary>Most bytes of a body that nobody has asked for more of: a form of a page takes less.</summary>
    private const int MostBodyBytes = 64 * 1024;

    /// <summary>The API. With TLS every port speaks gRPC and HTTP, and one is enough; without it gRPC and HTTP have a port each,
    /// because one cannot serve both.</summary>
    public static IWebHostBuilder ListenAsApi(this IWebHostBuilder host, HostSettings settings) =>
        host.ConfigureKestrel(kestrel =>
        {
            kestrel.Limits.MaxRequestBodySize = MostBodyBytes;
            // More than a key may have open: who asks for too much on one connection is told so, and does not wait for itself.
            kestrel.Limits.Http2.MaxStreamsPerConnection = Math.Max(200, 2 * settings.Access.CallsAtOnce);
            var certificate = settings.Tls?.Load();
            Listen(kestrel, settings.GrpcAddress, certificate is null ? HttpProtocols.Http2 : HttpProtocols.Http1AndHttp2, certificate);
            if (!settings.HasOnePort)
                Listen(kestrel, settings.HttpAddress, certificate is null ? HttpProtocols.Http1 : HttpProtocols.Http1AndHttp2, certificate);
            if (settings.LocalAddress is { } local)
                Listen(kestrel, local, HttpProtocols.Http1, null);
        });

    /// <summary>The worker: HTTP for its health.</summary>
    public static IWebHostBuilder ListenAsWorker(this IWebHostBuilder host, HostSettings settings) =>
        host.ConfigureKestrel(kestrel =>
        {
            kestrel.Limits.MaxRequestBodySize = MostBodyBytes;
            Listen(kestrel, settings.WorkerAddress, HttpProtocols.Http1, null);
        });

    private static void Listen(KestrelServerOptions kestrel, NetworkAddress address, HttpProtocols protocols, TlsCertificate? certificate) =>
        kestrel.Listen(address.Address, address.Port, endpoint =>
        {
            endpoint.Protocols = protocols;
            if (certificate is not null)
            {
                endpoint.UseHttps(https =>
                {
                    https.ServerCertificate = certificate.Own;
                    https.ServerCertificateChain = certificate.Chain;
                });
            }
        });
}

using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace FleetTrend.Hosting.Configuration;

/// <summary>Where a host listens.</summary>
public static class KestrelEndpoints
{
    /// <summary>The API: gRPC and HTTP on two ports, because without TLS one port cannot serve both.</summary>
    public static IWebHostBuilder ListenAsApi(this IWebHostBuilder host, HostSettings settings) =>
        host.ConfigureKestrel(kestrel =>
        {
            Listen(kestrel, settings.GrpcAddress, HttpProtocols.Http2);
            Listen(kestrel, settings.HttpAddress, HttpProtocols.Http1);
        });

    /// <summary>The worker: HTTP for its health.</summary>
    public static IWebHostBuilder ListenAsWorker(this IWebHostBuilder host, HostSettings settings) =>
        host.ConfigureKestrel(kestrel => Listen(kestrel, settings.WorkerAddress, HttpProtocols.Http1));

    private static void Listen(KestrelServerOptions kestrel, NetworkAddress address, HttpProtocols protocols) =>
        kestrel.Listen(address.Address, address.Port, endpoint => endpoint.Protocols = protocols);
}

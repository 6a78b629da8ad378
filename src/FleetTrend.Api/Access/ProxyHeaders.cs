using FleetTrend.Hosting.Configuration;
using Microsoft.AspNetCore.HttpOverrides;

namespace FleetTrend.Api.Access;

/// <summary>Takes the caller's address and the scheme from the headers of named proxies, and of nobody else: anyone can send them.</summary>
internal static class ProxyHeaders
{
    /// <summary>Comes before everything that looks at address or scheme.</summary>
    public static void UseProxyHeaders(this WebApplication app, HostSettings settings)
    {
        if (settings.TrustedProxies.Count == 0)
            return;
        var options = new ForwardedHeadersOptions
        {
            ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto,
            ForwardLimit = null, // as many as there are named proxies in a row
        };
        options.KnownProxies.Clear(); // loopback, by habit
        options.KnownIPNetworks.Clear();
        foreach (var network in settings.TrustedProxies)
            options.KnownIPNetworks.Add(network);
        app.UseForwardedHeaders(options);
    }
}

using System.Globalization;
using System.Net;

namespace FleetTrend.Hosting.Configuration;

/// <summary>An address to listen on, written <c>host:port</c>: an IP address, <c>localhost</c>, or <c>*</c> for every
/// interface; port 0 takes any free one.</summary>
/// <param name="Address">The interface.</param>
/// <param name="Port">0 to 65535.</param>
public sealed record NetworkAddress(IPAddress Address, int Port)
{
    /// <summary>Whether no other machine reaches it.</summary>
    public bool IsLoopback => IPAddress.IsLoopback(Address);

    /// <summary>A port on 127.0.0.1, which no other machine reaches.</summary>
    public static NetworkAddress Loopback(int port) => new(IPAddress.Loopback, port);

    /// <summary>Reads <c>host:port</c>, IPv6 as <c>[::1]:5080</c>.</summary>
    /// <returns>False when the text is no such address.</returns>
    public static bool TryParse(string text, out NetworkAddress address)
    {
        address = Loopback(0);
        var colon = text.LastIndexOf(':');
        if (colon < 1 || !ushort.TryParse(
                text.AsSpan(colon + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var port))
        {
            return false;
        }

        var host = text[..colon];
        var ip = host switch
        {
            "*" => IPAddress.Any,
            "localhost" => IPAddress.Loopback,
            _ when IPAddress.TryParse(host.Trim('[', ']'), out var parsed) => parsed,
            _ => null,
        };
        if (ip is null)
            return false;
        address = new NetworkAddress(ip, port);
        return true;
    }

    /// <summary><c>host:port</c>, as <see cref="TryParse"/> reads it.</summary>
    public override string ToString() => new IPEndPoint(Address, Port).ToString();
}

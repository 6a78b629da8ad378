using System.Net;
using FleetTrend.Hosting.Configuration;

namespace FleetTrend.Api.Access;

/// <summary>
/// The names that this server goes by. A page of another site can have its own name point at this machine and then read, in the reader's
/// browser, what is open here; the name that the browser asks for gives it away. It can do so with a name only: an IP address is what it says.
/// </summary>
internal sealed class HostNames(HostSettings settings)
{
    private const string Everything = "*";
    private const string AnyPart = "*.";

    private readonly List<string> names = ["localhost", new Uri(settings.PublicUrl).IdnHost, .. settings.AllowedHosts];

    /// <summary>Whether a request goes to this server by one of its names; one without a name comes from no browser.</summary>
    public bool Have(string host) => host.Length == 0 || IPAddress.TryParse(host, out _) || names.Any(name => Is(name, host.TrimEnd('.')));

    private static bool Is(string name, string host) =>
        name == Everything
        || name.Equals(host, StringComparison.OrdinalIgnoreCase)
        || (name.StartsWith(AnyPart, StringComparison.Ordinal) && host.EndsWith(name[1..], StringComparison.OrdinalIgnoreCase));
}

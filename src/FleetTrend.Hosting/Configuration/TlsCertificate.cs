using System.Security.Cryptography.X509Certificates;

namespace FleetTrend.Hosting.Configuration;

/// <summary>A certificate with its private key, and those between it and its root.</summary>
internal sealed record TlsCertificate(X509Certificate2 Own, X509Certificate2Collection Chain);

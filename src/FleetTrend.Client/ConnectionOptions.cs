namespace FleetTrend.Client;

/// <summary>Where the server is, and who calls.</summary>
public sealed record ConnectionOptions
{
    /// <summary>Address of the gRPC endpoint: https, or http where the server listens without TLS.</summary>
    public required Uri Address { get; init; }

    /// <summary>The API key, sent as <c>authorization: Bearer KEY</c> with each call; null sends none.</summary>
    public string? Key { get; init; }

    /// <summary>PEM file with the root certificates to trust instead of the machine's own; null trusts those.</summary>
    public string? RootCertificateFile { get; init; }

    /// <summary>
    /// A key is not sent unencrypted to another machine unless this is true: whoever reads it on the way can push in its name.
    /// </summary>
    public bool AllowKeyWithoutTls { get; init; }

    /// <summary>Longest wait for a connection, above zero.</summary>
    public TimeSpan ConnectLimit { get; init; } = TimeSpan.FromSeconds(10);
}

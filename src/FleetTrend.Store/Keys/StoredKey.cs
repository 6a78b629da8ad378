using System.Security.Cryptography;

namespace FleetTrend.Store.Keys;

/// <summary>A key with what its secret is checked against.</summary>
/// <param name="Key">The key.</param>
/// <param name="SecretHash">SHA-256 of its secret.</param>
public sealed record StoredKey(ApiKey Key, ReadOnlyMemory<byte> SecretHash)
{
    /// <summary>True where the text holds this key's secret; takes as long for a near miss as for a far one.</summary>
    public bool IsProvenBy(KeyText text) => CryptographicOperations.FixedTimeEquals(text.SecretHash(), SecretHash.Span);
}

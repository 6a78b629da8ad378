using System.Buffers;
using System.Security.Cryptography;
using System.Text;

namespace FleetTrend.Store.Keys;

/// <summary>
/// The text of a key: <c>ftk_ID_SECRET</c>. The identifier finds the row; the secret, 256 random bits, proves the right to it.
/// Both are written in the base 32 alphabet of RFC 4648 (section 6) in lower case, without padding: 12 and 52 characters.
/// </summary>
public readonly record struct KeyText
{
    private const string Prefix = "ftk";
    private const string Alphabet = "abcdefghijklmnopqrstuvwxyz234567";
    private const int IdLength = 12;
    private const int SecretLength = 52;

    private static readonly SearchValues<char> Letters = SearchValues.Create(Alphabet);

    private readonly string secret;

    private KeyText(string id, string secret)
    {
        Id = id;
        this.secret = secret;
    }

    /// <summary>Identifier; no secret.</summary>
    public string Id { get; }

    /// <summary>A new one, from the system's random numbers.</summary>
    public static KeyText Create() => new(
        RandomNumberGenerator.GetString(Alphabet, IdLength), RandomNumberGenerator.GetString(Alphabet, SecretLength));

    /// <summary>Reads a text.</summary>
    /// <returns>False when it is not built like a key.</returns>
    public static bool TryParse(string? text, out KeyText key)
    {
        key = default;
        var parts = text?.Split('_', 4) ?? [];
        if (parts is not [Prefix, { Length: IdLength } id, { Length: SecretLength } secret] || !Fits(id) || !Fits(secret))
            return false;
        key = new KeyText(id, secret);
        return true;
    }

    /// <summary>The text that a caller sends. Secret.</summary>
    public string Reveal() => $"{Prefix}_{Id}_{secret}";

    /// <summary>SHA-256 of the secret, 32 bytes. A slow hash protects what people choose; nobody guesses 256 random bits, and a
    /// fast one lets every call be checked.</summary>
    public byte[] SecretHash() => SHA256.HashData(Encoding.ASCII.GetBytes(secret));

    /// <summary>Without the secret.</summary>
    public override string ToString() => $"{Prefix}_{Id}_...";

    private static bool Fits(string text) => !text.AsSpan().ContainsAnyExcept(Letters);
}

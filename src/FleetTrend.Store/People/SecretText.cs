using System.Security.Cryptography;
using System.Text;

namespace FleetTrend.Store.People;

/// <summary>Random texts that prove a right: 260 bits, of a-z and 2-7. Only their hashes are stored.</summary>
internal static class SecretText
{
    private const string Alphabet = "abcdefghijklmnopqrstuvwxyz234567";
    private const int Length = 52;

    /// <summary>A new one, from the system's random numbers.</summary>
    public static string Create() => RandomNumberGenerator.GetString(Alphabet, Length);

    /// <summary>SHA-256, 32 bytes: nobody guesses 260 random bits, so a slow hash would protect nothing more.</summary>
    public static byte[] HashOf(string text) => SHA256.HashData(Encoding.UTF8.GetBytes(text));
}

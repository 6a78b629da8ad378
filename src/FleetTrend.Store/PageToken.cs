using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace FleetTrend.Store;

/// <summary>Where the next page of a list starts, opaque to callers.</summary>
internal static class PageToken
{
    /// <summary>A token for the key of the last item of a page.</summary>
    public static string Write(string lastKey) => Base64Url.EncodeToString(Encoding.UTF8.GetBytes(lastKey));

    /// <summary>A token for the number of the last item of a page.</summary>
    public static string Write(long lastId) => Write(lastId.ToString(CultureInfo.InvariantCulture));

    /// <summary>The key in a token, or null for the first page.</summary>
    /// <exception cref="FormatException">It is no token of ours.</exception>
    public static string? ReadKey(string? token)
    {
        if (string.IsNullOrEmpty(token))
            return null;
        var key = Encoding.UTF8.GetString(Base64Url.DecodeFromChars(token));

        // The database takes no NUL, and none of our keys has one.
        return key.Contains('\0') ? throw new FormatException("Not a page token.") : key;
    }

    /// <summary>The number in a token, or null for the first page.</summary>
    /// <exception cref="FormatException">It is no token of ours.</exception>
    public static long? ReadId(string? token) =>
        ReadKey(token) is not { } key ? null
        : long.TryParse(key, NumberStyles.None, CultureInfo.InvariantCulture, out var id) ? id
        : throw new FormatException("Not a page token.");

    /// <summary>A page from one item more than it may hold.</summary>
    public static Page<T> Cut<T>(IReadOnlyList<T> oneMore, int pageSize, Func<T, string> tokenOf) =>
        oneMore.Count <= pageSize
            ? new Page<T>(oneMore, null)
            : new Page<T>([.. oneMore.Take(pageSize)], tokenOf(oneMore[pageSize - 1]));
}

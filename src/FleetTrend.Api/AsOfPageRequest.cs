using System.Buffers.Text;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Google.Protobuf;

namespace FleetTrend.Api;

/// <summary>Which page of a list is asked for. A token holds the moment of knowledge of the first page, so that a refresh
/// in between neither doubles nor hides a row.</summary>
/// <param name="Size">Most items to return.</param>
/// <param name="AsOf">The moment of the first page; null on the first.</param>
/// <param name="After">Where earlier pages ended: a count of items, or the number of the last one.</param>
/// <param name="Fingerprint">Of the question: a token of one question is refused for another.</param>
internal sealed record AsOfPageRequest(int Size, DateTimeOffset? AsOf, long After, string Fingerprint)
{
    private const int MostTokenLength = 200;

    /// <summary>Reads fields page_size and page_token of a request; all its other fields are the question.</summary>
    public static AsOfPageRequest Read<T>(T request, int defaultSize = 50)
        where T : IMessage<T>, IDeepCloneable<T>
    {
        var size = request.Descriptor.FindFieldByName("page_size").Accessor;
        var token = request.Descriptor.FindFieldByName("page_token").Accessor;
        var question = request.Clone();
        size.Clear(question);
        token.Clear(question);
        var fingerprint = Convert.ToHexStringLower(SHA256.HashData(question.ToByteArray()).AsSpan(0, 8));
        var first = new AsOfPageRequest(Paging.Size((int)size.GetValue(request), 1_000, defaultSize), null, 0, fingerprint);
        return token.GetValue(request) is string { Length: > 0 } text ? first.At(text) : first;
    }

    /// <summary>The token of the next page; <paramref name="after"/> is its <see cref="After"/>.</summary>
    public string NextToken(DateTimeOffset asOf, long after) => Base64Url.EncodeToString(Encoding.ASCII.GetBytes(
        string.Create(CultureInfo.InvariantCulture, $"{asOf.UtcTicks}.{after}.{Fingerprint}")));

    private AsOfPageRequest At(string token)
    {
        Span<byte> bytes = stackalloc byte[MostTokenLength];
        if (token.Length <= MostTokenLength && Base64Url.IsValid(token) && Base64Url.TryDecodeFromChars(token, bytes, out var length)
            && Encoding.ASCII.GetString(bytes[..length]).Split('.') is [var ticks, var offset, var fingerprint]
            && long.TryParse(ticks, NumberStyles.None, CultureInfo.InvariantCulture, out var utcTicks)
            && utcTicks <= DateTimeOffset.MaxValue.UtcTicks
            && long.TryParse(offset, NumberStyles.None, CultureInfo.InvariantCulture, out var from)
            && fingerprint == Fingerprint)
        {
            return this with { AsOf = new DateTimeOffset(utcTicks, TimeSpan.Zero), After = from };
        }

        throw Paging.InvalidToken(token);
    }
}

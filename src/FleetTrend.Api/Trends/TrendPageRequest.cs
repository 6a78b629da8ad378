using System.Buffers.Text;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Google.Protobuf;

namespace FleetTrend.Api.Trends;

/// <summary>Which page of a list is asked for. A token holds the moment of knowledge of the first page, so that a refresh
/// in between neither doubles nor hides a row.</summary>
/// <param name="Size">Most items to return.</param>
/// <param name="AsOf">The moment of the first page; null on the first.</param>
/// <param name="Offset">Items on earlier pages.</param>
/// <param name="Fingerprint">Of the question: a token of one question is refused for another.</param>
internal sealed record TrendPageRequest(int Size, DateTimeOffset? AsOf, int Offset, string Fingerprint)
{
    private const int MostTokenLength = 200;

    /// <summary>Reads fields page_size and page_token of a request; all its other fields are the question.</summary>
    public static TrendPageRequest Of<T>(T request, int otherwise = 50)
        where T : IMessage<T>, IDeepCloneable<T>
    {
        var size = request.Descriptor.FindFieldByName("page_size").Accessor;
        var token = request.Descriptor.FindFieldByName("page_token").Accessor;
        var question = request.Clone();
        size.Clear(question);
        token.Clear(question);
        var fingerprint = Convert.ToHexStringLower(SHA256.HashData(question.ToByteArray()).AsSpan(0, 8));
        var first = new TrendPageRequest(Paging.Size((int)size.GetValue(request), 1_000, otherwise), null, 0, fingerprint);
        return token.GetValue(request) is string { Length: > 0 } text ? first.At(text) : first;
    }

    /// <summary>The token of the page that begins after <paramref name="count"/> more items.</summary>
    public string NextToken(DateTimeOffset asOf, int count) => Base64Url.EncodeToString(Encoding.ASCII.GetBytes(
        string.Create(CultureInfo.InvariantCulture, $"{asOf.UtcTicks}.{Offset + count}.{Fingerprint}")));

    private TrendPageRequest At(string token)
    {
        Span<byte> bytes = stackalloc byte[MostTokenLength];
        if (token.Length <= MostTokenLength && Base64Url.IsValid(token) && Base64Url.TryDecodeFromChars(token, bytes, out var length)
            && Encoding.ASCII.GetString(bytes[..length]).Split('.') is [var ticks, var offset, var fingerprint]
            && long.TryParse(ticks, NumberStyles.None, CultureInfo.InvariantCulture, out var utcTicks)
            && utcTicks <= DateTimeOffset.MaxValue.UtcTicks
            && int.TryParse(offset, NumberStyles.None, CultureInfo.InvariantCulture, out var from)
            && fingerprint == Fingerprint)
        {
            return this with { AsOf = new DateTimeOffset(utcTicks, TimeSpan.Zero), Offset = from };
        }

        throw Paging.InvalidToken(token);
    }
}

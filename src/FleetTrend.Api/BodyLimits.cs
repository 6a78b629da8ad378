using FleetTrend.Intake;
using Grpc.Core;
using Microsoft.AspNetCore.Grpc.JsonTranscoding;
using Microsoft.AspNetCore.Http.Features;

namespace FleetTrend.Api;

/// <summary>How much of a body is read. The web server takes little of anything; a call that was let in may send one message.</summary>
internal static class BodyLimits
{
    /// <summary>Most bytes of a message as it is read. Up to the announced limit it is taken, between the two it is refused with its size.</summary>
    public const int MostMessageBytes = 2 * ApiHost.MaxMessageBytes;

    /// <summary>Most bytes of a message of a call that needs no key: health, reflection.</summary>
    public const int MostOpenMessageBytes = 16 * 1024;

    private const int GrpcPrefixBytes = 5;

    /// <summary>The answer to a message beyond the limit.</summary>
    public static Google.Rpc.Status TooLarge { get; } = RefusalStatus.Build(new Refusal(
        "", $"more than {MostMessageBytes:#,0}", Reasons.MessageTooLarge, $"must be a message of up to {ApiHost.MaxMessageBytes:#,0} bytes")
    { IsBare = true });

    /// <summary>Lets a call that was let in read its body.</summary>
    /// <returns>Null, or what the call is refused with, and the HTTP status over JSON.</returns>
    public static (Google.Rpc.Status Status, int HttpStatus)? Raise(HttpContext context, IMethod method)
    {
        // A stream has no end; the framework takes its limit away and holds each of its messages against its own.
        if (method.Type is MethodType.ClientStreaming or MethodType.DuplexStreaming)
            return null;
        var isJson = IsJson(context);
        if (isJson && context.Request.Headers.ContentEncoding.ToString() is { Length: > 0 } encoding and not "identity")
        {
            return (RefusalStatus.Build(new Refusal("content-encoding", encoding, Reasons.ContentEncodingNotTaken, "must be absent: a JSON body is sent uncompressed")),
                StatusCodes.Status415UnsupportedMediaType);
        }

        var most = isJson ? MostMessageBytes : MostMessageBytes + GrpcPrefixBytes;
        if (context.Request.ContentLength > most)
            return (TooLarge, StatusCodes.Status413PayloadTooLarge);
        Set(context, most);
        return null;
    }

    /// <summary>What is still on its way of a refused call is thrown away as it comes, for some seconds: who is cut off while sending does
    /// not read the answer.</summary>
    public static void Discard(HttpContext context) => Set(context, null);

    private static bool IsJson(HttpContext context) => context.GetEndpoint()?.Metadata.GetMetadata<GrpcJsonTranscodingMetadata>() is not null;

    private static void Set(HttpContext context, long? most)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = most;
    }
}

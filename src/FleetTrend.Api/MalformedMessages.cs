using FleetTrend.Intake;
using Microsoft.AspNetCore.Http.Features;

namespace FleetTrend.Api;

/// <summary>
/// Messages that the framework itself will not read. It reads a unary request before any interceptor: bytes that are no message of the
/// call answer UNKNOWN, which arises here in no other way, and more bytes than it takes RESOURCE_EXHAUSTED without details, in a
/// stream too. Both are turned into the errors that the guide describes.
/// </summary>
internal static class MalformedMessages
{
    private const string Unknown = "2";
    private const string ResourceExhausted = "8";

    /// <summary>The answer to a message that cannot be read.</summary>
    public static Google.Rpc.Status Status { get; } =
        RefusalStatus.Build(new Refusal("", "", Reasons.MessageMalformed, "must be the bytes of a message of this call"));

    /// <summary>Rewrites the framework's answer on its way out.</summary>
    public static void UseMalformedMessageAnswers(this WebApplication app) => app.Use(async (context, next) =>
    {
        await next(context);
        var trailers = context.Response.HasStarted
            ? context.Features.Get<IHttpResponseTrailersFeature>()?.Trailers
            : context.Response.Headers;
        if (trailers is not { IsReadOnly: false })
            return;
        if (trailers["grpc-status"] == Unknown)
            StatusAnswers.Put(trailers, Status);
        else if (trailers["grpc-status"] == ResourceExhausted && !trailers.ContainsKey(StatusAnswers.Details))
            StatusAnswers.Put(trailers, BodyLimits.TooLarge);
    });
}

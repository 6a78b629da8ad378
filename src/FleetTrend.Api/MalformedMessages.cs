using FleetTrend.Intake;
using Google.Protobuf;
using Google.Rpc;
using Grpc.Core;
using Microsoft.AspNetCore.Http.Features;

namespace FleetTrend.Api;

/// <summary>
/// Bytes that are no message of the call. The framework reads a unary request before any interceptor and answers UNKNOWN; that is
/// the one way in which UNKNOWN arises here, and it is turned into the error that the guide describes.
/// </summary>
internal static class MalformedMessages
{
    private const string Unknown = "2";

    /// <summary>The answer to a message that cannot be read.</summary>
    public static Google.Rpc.Status Status { get; } =
        RefusalStatus.Of(new Refusal("", "", Reasons.MessageMalformed, "the bytes of a message of this call's request type."));

    /// <summary>Rewrites the framework's answer on its way out.</summary>
    public static void UseMalformedMessageAnswers(this WebApplication app) => app.Use(async (context, next) =>
    {
        await next(context);
        var trailers = context.Response.HasStarted
            ? context.Features.Get<IHttpResponseTrailersFeature>()?.Trailers
            : context.Response.Headers;
        if (trailers is not { IsReadOnly: false } || trailers["grpc-status"] != Unknown)
            return;
        trailers["grpc-status"] = ((int)StatusCode.InvalidArgument).ToString(System.Globalization.CultureInfo.InvariantCulture);
        trailers["grpc-message"] = Uri.EscapeDataString(Status.Message);
        trailers["grpc-status-details-bin"] = Convert.ToBase64String(Status.ToByteArray());
    });
}

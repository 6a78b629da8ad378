using System.Globalization;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Google.Rpc;
using Microsoft.AspNetCore.Grpc.JsonTranscoding;

namespace FleetTrend.Api;

/// <summary>A status as the answer of a call that no call handler has answered: headers over gRPC, a body over JSON.</summary>
internal static class StatusAnswers
{
    /// <summary>The header that carries a status with its details over gRPC.</summary>
    public const string Details = "grpc-status-details-bin";

    private const string Grpc = "application/grpc";

    /// <summary>The messages that details may hold.</summary>
    public static TypeRegistry DetailTypes { get; } = TypeRegistry.FromFiles(ErrorDetailsReflection.Descriptor);

    private static readonly JsonFormatter Json = new(JsonFormatter.Settings.Default.WithTypeRegistry(DetailTypes));

    /// <summary>Ends a call with a status.</summary>
    /// <param name="context">The call; its response has not started.</param>
    /// <param name="status">The status.</param>
    /// <param name="httpStatus">HTTP status over JSON; null takes the one that the guide names for the code.</param>
    public static Task WriteAsync(HttpContext context, Status status, int? httpStatus = null)
    {
        if (IsGrpc(context))
        {
            context.Response.ContentType = Grpc;
            Put(context.Response.Headers, status);
            return Task.CompletedTask;
        }

        context.Response.StatusCode = httpStatus ?? HttpStatusOf((Code)status.Code);
        context.Response.ContentType = "application/json";
        return context.Response.WriteAsync(Json.Format(status), context.RequestAborted);
    }

    /// <summary>Writes a status into the headers or trailers of a call over gRPC.</summary>
    public static void Put(IHeaderDictionary trailers, Status status)
    {
        trailers["grpc-status"] = status.Code.ToString(CultureInfo.InvariantCulture);
        trailers["grpc-message"] = Uri.EscapeDataString(status.Message);
        trailers[Details] = Convert.ToBase64String(status.ToByteArray());
    }

    private static bool IsGrpc(HttpContext context) =>
        context.Request.ContentType?.StartsWith(Grpc, StringComparison.OrdinalIgnoreCase) == true
        && context.GetEndpoint()?.Metadata.GetMetadata<GrpcJsonTranscodingMetadata>() is null;

    private static int HttpStatusOf(Code code) => code switch
    {
        Code.InvalidArgument or Code.FailedPrecondition => StatusCodes.Status400BadRequest,
        Code.Unauthenticated => StatusCodes.Status401Unauthorized,
        Code.PermissionDenied => StatusCodes.Status403Forbidden,
        Code.ResourceExhausted => StatusCodes.Status429TooManyRequests,
        Code.Unavailable => StatusCodes.Status503ServiceUnavailable,
        _ => StatusCodes.Status500InternalServerError,
    };
}

using System.Buffers;
using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json;
using FleetTrend.Intake;
using Microsoft.AspNetCore.Grpc.JsonTranscoding;
using Microsoft.AspNetCore.Http.Features;

namespace FleetTrend.Api.Json;

/// <summary>
/// Strict JSON: before the transcoder sees a call, its body and its query are held against the descriptors of the contract. The transcoder
/// passes over what it does not know, and a misspelt field or parameter would be a number that is not there, or a question about
/// everything. New calls are held to it without a line here.
/// </summary>
internal static class StrictJson
{
    private static readonly ConditionalWeakTable<GrpcJsonTranscodingMetadata, JsonCall> Calls = [];

    /// <summary>Puts it before the calls, behind whatever decides who may call.</summary>
    public static void UseStrictJson(this WebApplication app) => app.Use(async (context, next) =>
    {
        if (context.GetEndpoint()?.Metadata.GetMetadata<GrpcJsonTranscodingMetadata>() is not { } transcoding)
        {
            await next(context);
            return;
        }

        var refusals = await ReadAsync(context, Calls.GetValue(transcoding, static metadata => new JsonCall(metadata)));
        if (refusals.Count == 0)
            await next(context);
        else
            await StatusAnswers.WriteAsync(context, RefusalStatus.Build(refusals), StatusCodes.Status400BadRequest);
    });

    /// <summary>Holds a call against the contract and puts its canonical form in its place.</summary>
    private static async Task<IReadOnlyList<Refusal>> ReadAsync(HttpContext context, JsonCall call)
    {
        var request = context.Request;
        var refusals = QueryReader.Read(call, request.Query, out var query);
        if (refusals.Count > 0)
            return refusals;
        request.Query = new QueryCollection(query);
        var hasBody = context.Features.Get<IHttpRequestBodyDetectionFeature>()?.CanHaveBody == true;
        if (!call.HasBody)
        {
            return hasBody
                ? [new Refusal("body", "a body", Reasons.FieldNotAllowed, "must be absent: the fields of this call are parameters of its address") { IsBare = true }]
                : [];
        }

        if (!hasBody || !request.HasJsonContentType() || !IsUtf8(request))
            return [new Refusal("content-type", request.ContentType ?? "", Reasons.MessageMalformed, "must be application/json in UTF-8, with a body")];
        return await ReadBodyAsync(context, call);
    }

    private static async Task<IReadOnlyList<Refusal>> ReadBodyAsync(HttpContext context, JsonCall call)
    {
        var read = new ArrayBufferWriter<byte>();
        var reader = new JsonMessageReader();
        try
        {
            using var body = await JsonDocument.ParseAsync(context.Request.Body, default, context.RequestAborted);
            await using var writer = new Utf8JsonWriter(read, JsonMessageReader.Unchecked);
            reader.ReadBody(call, body.RootElement, writer);
            if (reader.Refusals.Count == 0)
                await writer.FlushAsync(context.RequestAborted);
        }
        catch (JsonException malformed)
        {
            return
            [
                new Refusal(
                    "body", $"none from line {malformed.LineNumber + 1}, byte {malformed.BytePositionInLine + 1} on", Reasons.MessageMalformed, "must be JSON")
                { IsBare = true },
            ];
        }

        if (reader.Unread.Count > 0)
            context.Features.Set(new UnreadRecords(reader.Unread));
        context.Request.Body = new MemoryStream(read.WrittenMemory.ToArray(), writable: false);
        context.Request.ContentLength = read.WrittenCount;
        context.Request.ContentType = "application/json";
        return reader.Refusals;
    }

    private static bool IsUtf8(HttpRequest request) =>
        request.GetTypedHeaders().ContentType?.Charset is not { HasValue: true } charset
        || charset.Equals(Encoding.UTF8.WebName, StringComparison.OrdinalIgnoreCase)
        || charset.Equals("\"utf-8\"", StringComparison.OrdinalIgnoreCase);
}

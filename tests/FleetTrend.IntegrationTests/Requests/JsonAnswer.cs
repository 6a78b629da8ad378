using System.Net;
using System.Text.Json.Nodes;

namespace FleetTrend.IntegrationTests.Requests;

/// <summary>What came of a call over JSON: the refusal of the call, or of the first record of a batch.</summary>
/// <param name="Status">HTTP status.</param>
/// <param name="Body">The whole answer.</param>
/// <param name="Reason">Reason of the first broken rule; empty where nothing was refused.</param>
/// <param name="Message">The message; empty where nothing was refused.</param>
/// <param name="Broken">Every broken rule: field, reason.</param>
internal sealed record JsonAnswer(HttpStatusCode Status, JsonNode? Body, string Reason, string Message, IReadOnlyList<(string Field, string Reason)> Broken)
{
    public static JsonAnswer Read(HttpStatusCode status, JsonNode? body)
    {
        var error = status == HttpStatusCode.OK ? body?["outcomes"]?[0]?["error"] : body;
        var details = error?["details"]?.AsArray();
        return new JsonAnswer(
            status, body,
            (string?)details?.FirstOrDefault()?["reason"] ?? (error is null ? "" : "none"),
            (string?)error?["message"] ?? "",
            [.. (details?.Skip(1).FirstOrDefault()?["fieldViolations"]?.AsArray() ?? []).Select(v => ((string)v!["field"]!, (string)v["reason"]!))]);
    }
}

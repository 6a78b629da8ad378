using FleetTrend.Api.Access;
using FleetTrend.Contracts.V1;
using FleetTrend.Observations;
using FleetTrend.Trends.Traces;
using Grpc.Core;
using Microsoft.AspNetCore.Http.HttpResults;
using Condition = FleetTrend.Records.Findings.Condition;

namespace FleetTrend.Api.Trends;

/// <summary>The rows behind a figure as CSV that <c>fleettrend analyze</c> reads, over plain HTTP; whoever reads the pages may have
/// them, and a key that reads trends.</summary>
internal static class TraceFiles
{
    /// <summary>Maps them.</summary>
    public static void MapTraceFiles(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.MapGet("/traces/rate.csv", RateAsync).RequireAuthorization(PageAccess.Files);
        app.MapGet("/traces/lives.csv", LivesAsync).RequireAuthorization(PageAccess.Files);
        app.MapGet("/traces/recurrence.csv", RecurrenceAsync).RequireAuthorization(PageAccess.Files);
        app.MapGet("/traces/growth.csv", GrowthAsync).RequireAuthorization(PageAccess.Files);
    }

    private static Task<IResult> RateAsync([AsParameters] TraceQuery asked, CancellationToken ct) => AnswerAsync(
        asked, ["typeGroup", "condition"],
        (aircraft, _) => TraceTables.Rate(asked.TypeGroup!, aircraft, Given(asked.Location), Given(asked.Kind), Condition(asked)), ct);

    private static Task<IResult> LivesAsync([AsParameters] TraceQuery asked, CancellationToken ct) => AnswerAsync(
        asked, ["typeGroup", "kind"], (aircraft, _) => TraceTables.Lives(asked.TypeGroup!, aircraft, asked.Kind!, Given(asked.Base)), ct);

    private static Task<IResult> RecurrenceAsync([AsParameters] TraceQuery asked, CancellationToken ct) => AnswerAsync(
        asked, ["typeGroup", "location", "condition"],
        (aircraft, _) => TraceTables.Recurrence(asked.TypeGroup!, aircraft, asked.Location!, Condition(asked)), ct);

    private static async Task<IResult> GrowthAsync([AsParameters] TraceQuery asked, CancellationToken ct) =>
        asked.Clock is null or "" or "calendar" or "hours"
            ? await AnswerAsync(
                asked, ["typeGroup", "kind", "condition", "clock"],
                (aircraft, asOf) => TraceTables.Growth(asked.TypeGroup!, aircraft, asked.Kind!, Condition(asked), asked.Clock == "calendar", asOf), ct)
            : Refused($"clock: must be calendar or hours; got \"{asked.Clock}\"", StatusCodes.Status400BadRequest);

    private static async Task<IResult> AnswerAsync(
        TraceQuery asked, string[] needed, Func<IReadOnlyList<AircraftObservations>, DateOnly, IEnumerable<string>> lines, CancellationToken ct)
    {
        if (Array.Find(needed, name => string.IsNullOrEmpty(asked.ValueOf(name))) is { } missing)
            return Refused($"{missing}: must be given", StatusCodes.Status400BadRequest);
        if (needed.Contains("condition", StringComparer.Ordinal) && (!asked.TryCondition(out var condition) || condition == Contracts.V1.Condition.Unspecified))
            return Refused($"condition: must be a condition such as CONDITION_CRACK; got \"{asked.Condition}\"", StatusCodes.Status400BadRequest);
        var request = new ListEvidenceRequest { TypeGroup = asked.TypeGroup ?? "", Location = asked.Location ?? "", Kind = asked.Kind ?? "" };
        DateTimeOffset asOf;
        try
        {
            await asked.Filters.RefuseUnknownAsync(request, ct);
            asOf = asked.AsOfTime is { } moment
                ? WireDates.ReadMoment("asOfTime", moment.ToWire(), await asked.Knowledge.FixAsOfAsync(ct))!.Value
                : (await asked.Trends.ReadAsync(null, ct)).AsOf;
        }
        catch (RpcException refusal)
        {
            return Refused(refusal.Status.Detail, refusal.StatusCode == StatusCode.NotFound ? StatusCodes.Status404NotFound : StatusCodes.Status400BadRequest);
        }

        var aircraft = await asked.Evidence.ReadAsync(request, asOf, ct);
        return TypedResults.Text(string.Join('\n', lines(aircraft, DateOnly.FromDateTime(asOf.UtcDateTime))) + "\n", "text/csv");
    }

    // As in ListEvidence, an empty filter is none.
    private static string? Given(string? filter) => string.IsNullOrEmpty(filter) ? null : filter;

    private static Condition Condition(TraceQuery asked) => asked.TryCondition(out var condition) ? (Condition)condition : default;

    private static ProblemHttpResult Refused(string detail, int status) => TypedResults.Problem(detail, statusCode: status);
}

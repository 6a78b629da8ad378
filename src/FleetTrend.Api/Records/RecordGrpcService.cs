using System.Globalization;
using FleetTrend.Api.Access;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.Rules;
using FleetTrend.Store.Histories;
using Grpc.Core;

namespace FleetTrend.Api.Records;

/// <summary>Gives stored records back. A key that may only push sees the records of its own source and no others.</summary>
internal sealed class RecordGrpcService(StoredRecords records, Knowledge knowledge, NameFilters filters, TimeProvider clock)
    : RecordService.RecordServiceBase
{
    private const int MostRevisionsPerPage = 500;
    private const int RecordsPerPage = 500;

    /// <inheritdoc/>
    public override async Task<GetRecordResponse> GetRecord(GetRecordRequest request, ServerCallContext context)
    {
        var source = Named(context, request.Source, request.SourceRecordId);
        var asOf = WireDates.ReadMoment("as_of_time", request.AsOfTime, clock.GetUtcNow());
        var record = await records.FindAsync(source, request.SourceRecordId, asOf, context.CancellationToken)
            ?? throw NotFound(request.SourceRecordId);
        return new GetRecordResponse { Record = record.ToWire() };
    }

    /// <inheritdoc/>
    public override async Task<ListRecordRevisionsResponse> ListRecordRevisions(ListRecordRevisionsRequest request, ServerCallContext context)
    {
        var source = Named(context, request.Source, request.SourceRecordId);
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var size = Paging.Size(request.PageSize, MostRevisionsPerPage);
        if (!int.TryParse(request.PageToken, NumberStyles.None, CultureInfo.InvariantCulture, out var after) && request.PageToken.Length > 0)
            throw Paging.InvalidToken(request.PageToken);
        var revisions = await records.ReadRevisionsAsync(source, request.SourceRecordId, after, size + 1, context.CancellationToken);
        if (revisions.Count == 0 && request.PageToken.Length == 0)
            throw NotFound(request.SourceRecordId);
        return new ListRecordRevisionsResponse
        {
            Revisions = { revisions.Take(size).Select(r => r.ToWire()) },
            NextPageToken = revisions.Count > size ? revisions[size - 1].Key.Revision.ToString(CultureInfo.InvariantCulture) : "",
        };
    }

    /// <inheritdoc/>
    public override async Task<ListRecordsResponse> ListRecords(ListRecordsRequest request, ServerCallContext context)
    {
        var source = Caller.SourceFor(context, "source", request.Source);
        var refusals = RecordQuestionRules.Check(request);
        if (refusals.Count > 0)
            throw refusals.ToException();
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var page = AsOfPageRequest.Read(request, RecordsPerPage);
        var asOf = page.AsOf ?? await MomentAsync(request, context.CancellationToken);
        var filter = new RecordFilter(
            request.Registration.Length == 0 ? null : request.Registration.ToUpperInvariant(),
            source.Length == 0 ? null : source,
            request.Kind == RecordKind.Unspecified ? null : (FleetTrend.Records.RecordKind)request.Kind);
        var found = await records.ReadAsync(filter, asOf, page.After, page.Size + 1, context.CancellationToken);
        return new ListRecordsResponse
        {
            Records = { found.Take(page.Size).Select(r => r.ToWire()) },
            NextPageToken = found.Count > page.Size ? page.NextToken(asOf, found[page.Size - 1].Id) : "",
            AsOfTime = asOf.ToWire(),
        };
    }

    /// <summary>The moment of a first page. It is fixed, so that no record in flight slips in between two pages.</summary>
    private async Task<DateTimeOffset> MomentAsync(ListRecordsRequest request, CancellationToken ct)
    {
        var now = await knowledge.FixAsOfAsync(ct);
        return WireDates.ReadMoment("as_of_time", request.AsOfTime, now) ?? now;
    }

    private static string Named(ServerCallContext context, string asked, string sourceRecordId)
    {
        var source = Caller.SourceFor(context, "source", asked);
        var refusals = RecordQuestionRules.Check(source, sourceRecordId);
        return refusals.Count == 0 ? source : throw refusals.ToException();
    }

    private static RpcException NotFound(string sourceRecordId) =>
        new Refusal("source_record_id", sourceRecordId, Reasons.RecordNotFound, "must be a record that was known at that moment").ToException();
}

using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using Grpc.Core;

namespace FleetTrend.Api.Trends;

/// <content>What is put together of one aircraft when it is asked for.</content>
internal sealed partial class TrendGrpcService
{
    /// <inheritdoc/>
    public override async Task<GetLookListResponse> GetLookList(GetLookListRequest request, ServerCallContext context)
    {
        if (request.Registration.Length == 0)
            throw new Refusal("registration", "", Reasons.FieldRequired, "must be given").ToException();
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var published = await trends.ReadAsync(null, context.CancellationToken);
        var registration = request.Registration.ToUpperInvariant();
        return new GetLookListResponse
        {
            LookList = (await lookLists.ReadAsync(published, registration, context.CancellationToken))?.ToWire()
                ?? throw new Refusal("registration", request.Registration, Reasons.AircraftNotFound, "must be an aircraft that the latest refresh knows").ToException(),
            Origin = TrendReader.OriginOf(published),
            Freshness = await trends.FreshnessAsync(published.AsOf, context.CancellationToken),
        };
    }

    /// <inheritdoc/>
    public override async Task<GetAuthorityDraftResponse> GetAuthorityDraft(GetAuthorityDraftRequest request, ServerCallContext context)
    {
        if (request.Registration.Length == 0)
            throw new Refusal("registration", "", Reasons.FieldRequired, "must be given").ToException();
        if (request.SourceRecordId.Length == 0)
            throw new Refusal("source_record_id", "", Reasons.FieldRequired, "must be given").ToException();
        await filters.RefuseUnknownAsync(request, context.CancellationToken);
        var published = await trends.ReadAsync(null, context.CancellationToken);
        var all = await drafts.ReadAsync(published, request.Registration.ToUpperInvariant(), context.CancellationToken)
            ?? throw new Refusal("registration", request.Registration, Reasons.AircraftNotFound, "must be an aircraft that the latest refresh knows").ToException();
        return new GetAuthorityDraftResponse
        {
            Draft = all.FirstOrDefault(d => d.Key.Source == request.Source && d.Key.SourceRecordId == request.SourceRecordId)?.ToWire()
                ?? throw new Refusal("source_record_id", request.SourceRecordId, Reasons.RecordNotFound, "must be a finding of the aircraft when it was first seen").ToException(),
            Origin = TrendReader.OriginOf(published),
            Freshness = await trends.FreshnessAsync(published.AsOf, context.CancellationToken),
        };
    }
}

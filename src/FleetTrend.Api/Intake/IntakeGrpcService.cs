using FleetTrend.Api.Access;
using FleetTrend.Api.Json;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Intake.HeldRecords;
using FleetTrend.Intake.Rules;
using FleetTrend.Store.Fleet;
using Google.Protobuf;
using Google.Protobuf.Collections;
using Google.Rpc;
using Grpc.Core;

namespace FleetTrend.Api.Intake;

/// <summary>Takes records in: one, many, or a stream.</summary>
internal sealed class IntakeGrpcService(
    RecordIntake intake, HeldRecordIntake held, NameFilters filters, IHostApplicationLifetime lifetime, ILogger<IntakeGrpcService> log)
    : IntakeService.IntakeServiceBase
{
    private const int MostPerPage = 500;
    private static readonly Dictionary<int, IReadOnlyList<Refusal>> NoneUnread = [];

    /// <inheritdoc/>
    public override async Task<PushRecordResponse> PushRecord(PushRecordRequest request, ServerCallContext context)
    {
        RefuseTooLarge(request);
        var outcomes = await PushAsync(
            [request.Record ?? new Record()], Terms(context, request.HoldUnregistered), request.ValidateOnly, context.CancellationToken);
        LogOutcomes(outcomes);
        return outcomes[0].Error is { } error
            ? throw error.ToRpcException()
            : new PushRecordResponse { Outcome = outcomes[0] };
    }

    /// <inheritdoc/>
    public override async Task<PushRecordsResponse> PushRecords(PushRecordsRequest request, ServerCallContext context)
    {
        RefuseTooLarge(request);
        if (request.Records.Count is 0 or > RecordIntake.MaxRecords)
        {
            throw new Refusal("records", request.Records.Count == 0 ? "" : $"{request.Records.Count}", request.Records.Count == 0 ? Reasons.FieldRequired : Reasons.TooManyItems,
                $"must be a list of 1 to {RecordIntake.MaxRecords:#,0} records")
            { IsBare = true }.ToException();
        }

        var unread = context.GetHttpContext().Features.Get<UnreadRecords>()?.ByPlace ?? NoneUnread;
        List<Record> readable = [.. request.Records.Where((_, place) => !unread.ContainsKey(place))];
        var answered = readable.Count == 0
            ? []
            : await PushAsync(readable, Terms(context, request.HoldUnregistered), request.ValidateOnly, context.CancellationToken);
        var outcomes = InOrder(request.Records, unread, answered);
        LogOutcomes(outcomes);
        return new PushRecordsResponse
        {
            Outcomes = { outcomes },
            AcceptedCount = outcomes.Count(o => o.State == RecordState.Accepted),
            UnchangedCount = outcomes.Count(o => o.State == RecordState.Unchanged),
            RefusedCount = outcomes.Count(o => o.State == RecordState.Refused),
            ValidCount = outcomes.Count(o => o.State == RecordState.Valid),
            HeldCount = outcomes.Count(o => o.State == RecordState.Held),
        };
    }

    /// <inheritdoc/>
    public override async Task StreamRecords(
        IAsyncStreamReader<StreamRecordsRequest> requestStream,
        IServerStreamWriter<StreamRecordsResponse> responseStream,
        ServerCallContext context)
    {
        // A stream can last for hours; a server that stops does not wait for it.
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(context.CancellationToken, lifetime.ApplicationStopping);
        using var stream = new RecordStream(intake, OwnSource(context), LogRefused);
        try
        {
            await stream.RunAsync(requestStream, responseStream, ending.Token);
            ApiLog.StreamEnded(log, stream.Acknowledged);
        }
        catch (OperationCanceledException) when (lifetime.ApplicationStopping.IsCancellationRequested)
        {
            throw new RpcException(new Grpc.Core.Status(
                StatusCode.Unavailable, "The server is stopping; send again what was not acknowledged."));
        }
        catch (Exception) when (context.CancellationToken.IsCancellationRequested)
        {
            ApiLog.StreamBroken(log, stream.Acknowledged);
            throw;
        }
    }

    /// <inheritdoc/>
    public override async Task<ListHeldRecordsResponse> ListHeldRecords(ListHeldRecordsRequest request, ServerCallContext context)
    {
        var source = Caller.SourceFor(context, "source", request.Source);
        var refusals = HeldRecordRules.Check(request);
        if (refusals.Count > 0)
            throw refusals.ToException();
        await filters.RefuseUnknownAsync(request, context.CancellationToken, NameKind.HeldAircraft);
        var page = await Paging.ReadAsync(request.PageToken, () => held.ListAsync(
            source, request.Registration, Paging.Size(request.PageSize, MostPerPage), request.PageToken, context.CancellationToken));
        return new ListHeldRecordsResponse { Records = { page.Items }, NextPageToken = page.NextPageToken ?? "" };
    }

    private Task<IReadOnlyList<RecordOutcome>> PushAsync(
        IReadOnlyList<Record> records, PushTerms terms, bool validateOnly, CancellationToken ct) =>
        validateOnly ? intake.CheckAsync(records, terms, new CheckedAircraft(), ct) : intake.PushAsync(records, terms, ct);

    /// <summary>Outcomes of all records: those that were answered, and those whose JSON could not be read.</summary>
    private static List<RecordOutcome> InOrder(
        RepeatedField<Record> records, IReadOnlyDictionary<int, IReadOnlyList<Refusal>> unread, IReadOnlyList<RecordOutcome> answered)
    {
        var outcomes = new List<RecordOutcome>(records.Count);
        var next = 0;
        for (var place = 0; place < records.Count; place++)
        {
            outcomes.Add(unread.TryGetValue(place, out var refusals)
                ? new RecordOutcome { Key = records[place].Key, State = RecordState.Refused, Error = RefusalStatus.Build(refusals) }
                : answered[next++]);
        }

        return outcomes;
    }

    private static PushTerms Terms(ServerCallContext context, bool holdUnregistered) =>
        new(OwnSource(context), holdUnregistered ? MissingPlace.Hold : MissingPlace.Refuse);

    /// <summary>A key that may write records has a source.</summary>
    private static string OwnSource(ServerCallContext context) => Caller.Read(context).Source!;

    private void LogOutcomes(IReadOnlyList<RecordOutcome> outcomes)
    {
        var refused = LogRefused(outcomes);
        ApiLog.RecordsPushed(log, outcomes.Count(o => o.State == RecordState.Accepted), outcomes.Count(o => o.State == RecordState.Unchanged), refused);
    }

    private int LogRefused(IReadOnlyList<RecordOutcome> outcomes)
    {
        var refused = outcomes.Count(o => o.State == RecordState.Refused);
        if (refused > 0)
        {
            var info = outcomes.First(o => o.State == RecordState.Refused).Error.GetDetail<ErrorInfo>();
            ApiLog.RecordsRefused(log, refused, outcomes.Count, info?.Reason ?? "", info?.Metadata.GetValueOrDefault("field") ?? "");
        }

        return refused;
    }

    private static void RefuseTooLarge(IMessage request)
    {
        var bytes = request.CalculateSize();
        if (bytes > ApiHost.MaxMessageBytes)
            throw new Refusal("", $"{bytes}", Reasons.MessageTooLarge, $"must be a message of up to {ApiHost.MaxMessageBytes:#,0} bytes") { IsBare = true }.ToException();
    }
}

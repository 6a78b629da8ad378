using FleetTrend.Contracts.V1;
using Google.Rpc;
using Grpc.Core;

namespace FleetTrend.IntegrationTests.Intake;

/// <summary>Pushes records until each has an outcome; a broken connection costs time and nothing else.</summary>
public sealed class ShopClient(IntakeService.IntakeServiceClient intake)
{
    /// <summary>Outcomes in the order of the records.</summary>
    public async Task<IReadOnlyList<RecordOutcome>> PushAsync(IReadOnlyList<Record> records, CancellationToken ct)
    {
        var outcomes = new RecordOutcome?[records.Count];
        for (var pause = TimeSpan.FromSeconds(1); ; pause = TimeSpan.FromSeconds(Math.Min(60, pause.TotalSeconds * 2)))
        {
            try
            {
                await StreamAsync(records, outcomes, ct);
                return outcomes!;
            }
            catch (RpcException broken) when (broken.StatusCode == StatusCode.Unavailable)
            {
                await Task.Delay(pause, ct); // then again what has no outcome: what was stored answers "unchanged"
            }
        }
    }

    /// <summary>What to tell whoever entered the record.</summary>
    public static string Explain(RecordOutcome outcome) => outcome.State == RecordState.Refused
        ? $"{outcome.Key.SourceRecordId}: {outcome.Error.Message} [{outcome.Error.GetDetail<ErrorInfo>()?.Reason}]"
        : $"{outcome.Key.SourceRecordId}: stored since {outcome.AcceptTime.ToDateTimeOffset():u}";

    private async Task StreamAsync(IReadOnlyList<Record> records, RecordOutcome?[] outcomes, CancellationToken ct)
    {
        using var call = intake.StreamRecords(cancellationToken: ct);
        var reading = Task.Run(async () =>
        {
            await foreach (var answer in call.ResponseStream.ReadAllAsync(ct))
                outcomes[answer.Sequence] = answer.Outcome;
        }, ct);
        for (var i = 0; i < records.Count; i++)
        {
            if (outcomes[i] is null)
                await call.RequestStream.WriteAsync(new StreamRecordsRequest { Sequence = i, Record = records[i] }, ct);
        }

        await call.RequestStream.CompleteAsync();
        await reading;
    }
}

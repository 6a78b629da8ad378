using System.Diagnostics;
using FleetTrend.Contracts.V1;
using FleetTrend.Synthetic;
using Grpc.Core;
using Grpc.Net.Client;

namespace FleetTrend.Cli.Demo;

/// <summary>Pushes a synthetic fleet over gRPC, as any integrator would: source, type groups, then a stream of records.</summary>
internal sealed class FleetPush(DemoKeys keys) : IDisposable
{
    private const int LayoutPageSize = 500;

    private GrpcChannel? channel;

    /// <summary>Layouts that the server has.</summary>
    public async Task<IReadOnlyCollection<Layout>> LayoutsAsync(CancellationToken ct)
    {
        var answer = await new LayoutService.LayoutServiceClient(keys.Administering).ListLayoutsAsync(
            new ListLayoutsRequest { PageSize = LayoutPageSize }, cancellationToken: ct);
        return answer.Layouts;
    }

    /// <summary>Registers source and type groups.</summary>
    public async Task RegisterAsync(SyntheticFleet fleet, CancellationToken ct)
    {
        channel = await keys.PushingAsync(fleet.Source, ct);
        var layouts = new LayoutService.LayoutServiceClient(keys.Administering);
        foreach (var typeGroup in fleet.TypeGroups)
        {
            await layouts.CreateTypeGroupAsync(new CreateTypeGroupRequest { TypeGroup = typeGroup }, cancellationToken: ct);
        }
    }

    /// <summary>Pushes records and counts what became of them.</summary>
    /// <param name="records">What to push.</param>
    /// <param name="progress">Told the number of acknowledged records.</param>
    /// <param name="ct">Cancels the push; acknowledged records stay.</param>
    public async Task<PushCount> PushAsync(IReadOnlyList<Record> records, IProgress<int> progress, CancellationToken ct)
    {
        var started = Stopwatch.GetTimestamp();
        using var call = new IntakeService.IntakeServiceClient(channel!).StreamRecords(cancellationToken: ct);
        var answers = CountAnswersAsync(call.ResponseStream, progress, ct);
        long sequence = 0;
        foreach (var record in records)
        {
            await call.RequestStream.WriteAsync(new StreamRecordsRequest { Sequence = ++sequence, Record = record }, ct);
        }

        await call.RequestStream.CompleteAsync();
        var count = await answers;
        return count with { Elapsed = Stopwatch.GetElapsedTime(started) };
    }

    /// <inheritdoc/>
    public void Dispose() => channel?.Dispose();

    private static async Task<PushCount> CountAnswersAsync(
        IAsyncStreamReader<StreamRecordsResponse> answers, IProgress<int> progress, CancellationToken ct)
    {
        int accepted = 0, unchanged = 0;
        var refusals = new List<string>();
        await foreach (var answer in answers.ReadAllAsync(ct))
        {
            switch (answer.Outcome.State)
            {
                case RecordState.Accepted:
                    accepted++;
                    break;
                case RecordState.Unchanged:
                    unchanged++;
                    break;
                default:
                    refusals.Add($"{answer.Outcome.Key.SourceRecordId}: {answer.Outcome.Error.Message}");
                    break;
            }

            progress.Report(accepted + unchanged + refusals.Count);
        }

        return new PushCount(accepted, unchanged, refusals, TimeSpan.Zero);
    }
}

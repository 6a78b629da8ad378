using System.Diagnostics;
using FleetTrend.Contracts.V1;
using Grpc.Net.Client;

namespace FleetTrend.PostgresBenchmarks.Intake;

/// <summary>A single client that keeps a bounded number of records in flight.</summary>
internal static class StreamClient
{
    private const int MostInFlight = 10_000;

    /// <summary>Seconds until all of them are acknowledged as accepted.</summary>
    /// <param name="channel">The server.</param>
    /// <param name="records">Records made beforehand, so that making them is not timed; or made on the way.</param>
    /// <param name="onAcknowledged">Told the number acknowledged so far.</param>
    /// <exception cref="InvalidOperationException">A record was not accepted.</exception>
    public static async Task<double> PushAsync(GrpcChannel channel, IEnumerable<Record> records, Action<long>? onAcknowledged = null)
    {
        var clock = Stopwatch.StartNew();
        using var call = new IntakeService.IntakeServiceClient(channel).StreamRecords();
        using var room = new SemaphoreSlim(MostInFlight);
        var reading = Task.Run(async () =>
        {
            var acknowledged = 0L;
            while (await call.ResponseStream.MoveNext(default))
            {
                if (call.ResponseStream.Current.Outcome.State != RecordState.Accepted)
                    throw new InvalidOperationException($"Not accepted: {call.ResponseStream.Current.Outcome}");
                room.Release();
                onAcknowledged?.Invoke(++acknowledged);
            }
        });
        var sequence = 0L;
        foreach (var record in records)
        {
            if (!await room.WaitAsync(TimeSpan.FromMinutes(1)))
                break; // the reader says why
            await call.RequestStream.WriteAsync(new StreamRecordsRequest { Sequence = ++sequence, Record = record });
        }

        await call.RequestStream.CompleteAsync();
        await reading;
        return clock.Elapsed.TotalSeconds;
    }
}

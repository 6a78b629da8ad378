using FleetTrend.Contracts.V1;
using FleetTrend.Synthetic;
using Grpc.Net.Client;
using Date = Google.Type.Date;

namespace FleetTrend.PostgresBenchmarks.Pages;

/// <summary>Pushes meter readings at a steady rate, until it is disposed.</summary>
internal sealed class SteadyIntake : IAsyncDisposable
{
    private const int PerCall = 10;
    private static readonly TimeSpan Interval = TimeSpan.FromMilliseconds(100);

    private readonly IntakeService.IntakeServiceClient intake;
    private readonly IReadOnlyList<string> registrations;
    private readonly CancellationTokenSource stop = new();
    private readonly Task pushing;

    public SteadyIntake(GrpcChannel channel, IReadOnlyList<string> registrations)
    {
        intake = new IntakeService.IntakeServiceClient(channel);
        this.registrations = registrations;
        pushing = PushAsync(stop.Token);
    }

    /// <summary>Records accepted so far.</summary>
    public int Accepted { get; private set; }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await pushing;
        stop.Dispose();
    }

    private async Task PushAsync(CancellationToken ct)
    {
        using var timer = new PeriodicTimer(Interval);
        while (!ct.IsCancellationRequested)
        {
            var request = new PushRecordsRequest();
            request.Records.AddRange(Enumerable.Range(Accepted, PerCall).Select(Reading));
            var response = await intake.PushRecordsAsync(request, cancellationToken: CancellationToken.None);
            if (response.Outcomes.FirstOrDefault(o => o.State != RecordState.Accepted) is { } other)
                throw new InvalidOperationException($"Not accepted: {other}");
            Accepted += PerCall;
            try
            {
                await timer.WaitForNextTickAsync(ct);
            }
            catch (OperationCanceledException)
            {
                return;
            }
        }
    }

    private Record Reading(int number)
    {
        var today = TimeProvider.System.GetUtcNow();
        return new Record
        {
            Key = new RecordKey
            {
                Source = SyntheticOperator.SourceName,
                SourceRecordId = $"steady-{number}",
                Revision = 1,
            },
            MeterReading = new MeterReading
            {
                Registration = registrations[number % registrations.Count],
                ReadingDate = new Date { Year = today.Year, Month = today.Month, Day = today.Day },
                MeterHours = 20_000 + (number / 10.0),
            },
        };
    }
}

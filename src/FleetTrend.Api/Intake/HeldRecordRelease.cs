using FleetTrend.Intake.HeldRecords;
using FleetTrend.Store;

namespace FleetTrend.Api.Intake;

/// <summary>Lets held records in once what they wait for is there: right after it came in this process, and otherwise within
/// <see cref="Pause"/>. It runs beside the calls, so that nobody who registers an aircraft waits for its held records.</summary>
internal sealed class HeldRecordRelease(HeldRecordIntake held, ReleaseSignal signal, JobLock locks, ILogger<HeldRecordRelease> log) : BackgroundService
{
    /// <summary>Longest time between two looks.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromSeconds(10);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await signal.WaitAsync(Pause, stoppingToken);
                await using var entered = await locks.TryEnterAsync("release-held-records", stoppingToken);
                var released = entered is null ? 0 : await held.ReleaseAsync(stoppingToken);
                if (released > 0)
                    ApiLog.HeldRecordsReleased(log, released);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception exception) when (FaultAnswers.IsDatabaseUnavailable(exception))
            {
                ApiLog.DatabaseUnavailable(log, nameof(HeldRecordRelease), exception.Message);
            }
            catch (Exception exception) // nobody else sees it; the records stay held and the next look tries again
            {
                ApiLog.Fault(log, nameof(HeldRecordRelease), exception);
            }
        }
    }
}

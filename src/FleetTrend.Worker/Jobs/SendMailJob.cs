using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.Mail;
using FleetTrend.Store;
using FleetTrend.Store.Outbox;
using FleetTrend.Worker.Mail;
using Hangfire;
using MimeKit;

namespace FleetTrend.Worker.Jobs;

/// <summary>Sends the mails that are owed. What fails is tried again, later each time, until it is refused for good or has failed for too long.</summary>
public sealed class SendMailJob(
    OutboxStore outbox,
    MailComposer composer,
    IMailSender sender,
    JobLock locks,
    MailSettings settings,
    TimeProvider time,
    WorkerMetrics metrics,
    ILogger<SendMailJob> log)
{
    private const int MailsPerRun = 50;
    private static readonly TimeSpan Lease = TimeSpan.FromMinutes(2);
    private static readonly TimeSpan LongestPause = TimeSpan.FromHours(1);

    /// <summary>Sends what is due. The next tick comes in seconds: no retry of the job, only of each mail.</summary>
    [ShortLived]
    [AutomaticRetry(Attempts = 0, OnAttemptsExceeded = AttemptsExceededAction.Delete)]
    public async Task RunAsync(CancellationToken ct)
    {
        await using var entered = await locks.TryEnterAsync(JobNames.SendMail, ct);
        if (entered is null)
        {
            return;
        }

        foreach (var mail in await outbox.TakeDueAsync(MailsPerRun, Lease, ct))
        {
            await SendAsync(mail, ct);
        }
    }

    private async Task SendAsync(DueMail mail, CancellationToken ct)
    {
        try
        {
            await sender.SendAsync(await composer.ComposeAsync(mail, ct), ct);
            await outbox.MarkSentAsync(mail.MailId, ct);
            metrics.MailSent();
            WorkerLog.MailSent(log, mail.MessageId, mail.Attempt);
        }
        catch (Exception refusal) when (refusal is MailRefusedException or ParseException)
        {
            await GiveUpAsync(mail, refusal, ct);
        }
        catch (IOException failure) when (time.GetUtcNow() - mail.OwedTime >= settings.GiveUpAfter)
        {
            await GiveUpAsync(mail, failure, ct);
        }
        catch (IOException failure)
        {
            var pause = TimeSpan.FromSeconds(Math.Min(LongestPause.TotalSeconds, 15 * Math.Pow(2, mail.Attempt - 1)));
            await outbox.MarkFailedAsync(mail.MailId, mail.Attempt, failure.Message, time.GetUtcNow() + pause, ct);
            metrics.MailFailed();
            WorkerLog.MailFailed(log, mail.MessageId, mail.Attempt, pause.TotalSeconds, failure);
        }
    }

    private async Task GiveUpAsync(DueMail mail, Exception reason, CancellationToken ct)
    {
        await outbox.GiveUpAsync(mail.MailId, mail.Attempt, reason.Message, ct);
        metrics.MailGivenUp();
        WorkerLog.MailGivenUp(log, mail.MailId, mail.MessageId, mail.ReportId, mail.Attempt, reason);
    }
}

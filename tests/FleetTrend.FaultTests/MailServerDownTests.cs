using System.Diagnostics.Metrics;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.Mail;
using FleetTrend.IntegrationTests;
using FleetTrend.Reports.Blocks;
using FleetTrend.Store;
using FleetTrend.Store.Outbox;
using FleetTrend.Store.Reports;
using FleetTrend.Worker;
using FleetTrend.Worker.Jobs;
using FleetTrend.Worker.Mail;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using MimeKit;
using SmtpServer.Protocol;

namespace FleetTrend.FaultTests;

[Collection(SharedPostgres.Name)]
public class MailServerDownTests(PostgresFixture server)
{
    private static readonly byte[] Plot = [0x89, 0x50, 0x4E, 0x47];

    [Fact]
    public async Task A_mail_that_the_server_did_not_take_goes_out_once_when_the_server_is_back()
    {
        await using var database = await MigratedDatabase.CreateAsync(server);
        await using var services = await OweOneMailAsync(database);
        var port = ProductProcess.FreePort();
        var job = Job(services, port);

        await job.RunAsync(CancellationToken.None);
        Assert.Equal(1L, await ScalarAsync(database, "select attempt_count from outbox_mails where sent_time is null and last_error is not null"));

        await DueAtOnceAsync(database);
        await using var mail = new MailServer(port);
        await job.RunAsync(CancellationToken.None);
        await job.RunAsync(CancellationToken.None);

        var message = Assert.Single(mail.Messages);
        Assert.Equal("News of a synthetic fleet", message.Subject);
        Assert.Equal("shop@synthetic.example", Assert.Single(message.To.Mailboxes).Address);
        Assert.Contains("Statistics support a decision", message.TextBody, StringComparison.Ordinal);
        var plot = Assert.Single(message.BodyParts.OfType<MimePart>(), p => p.ContentType.MimeType == "image/png");
        Assert.Matches(@"^report-[0-9]+\.levels\.png@.+$", plot.ContentId);
        Assert.Contains($"cid:{plot.ContentId}", message.HtmlBody, StringComparison.Ordinal);
        var wall = Assert.IsType<MimePart>(Assert.Single(message.Attachments));
        Assert.Equal(("application/pdf", "fleettrend-report-2026-03-29.pdf"), (wall.ContentType.MimeType, wall.FileName));
        Assert.Equal(1L, await ScalarAsync(database, "select count(*) from outbox_mails where sent_time is not null"));
    }

    [Theory] // Reply codes of RFC 5321, 4.2.3: no such mailbox, and a transaction that failed for good.
    [InlineData(SmtpReplyCode.MailboxUnavailable)]
    [InlineData(SmtpReplyCode.TransactionFailed)]
    public async Task A_mail_that_is_refused_for_good_is_given_up_at_once_and_goes_out_when_somebody_asks(SmtpReplyCode refusal)
    {
        await using var database = await MigratedDatabase.CreateAsync(server);
        await using var services = await OweOneMailAsync(database);
        var outbox = services.GetRequiredService<OutboxStore>();
        var port = ProductProcess.FreePort();
        await using var mail = new MailServer(port) { Refusal = new SmtpResponse(refusal, "never") };
        var job = Job(services, port);

        await job.RunAsync(CancellationToken.None);
        await DueAtOnceAsync(database);
        await job.RunAsync(CancellationToken.None);

        var given = Assert.Single((await outbox.ListAsync(MailState.GivenUp, 10, null, default)).Items);
        Assert.Equal(1, given.AttemptCount);
        Assert.Contains($"{(int)refusal} never", given.LastError, StringComparison.Ordinal);

        mail.Refusal = null;
        Assert.Equal(MailState.Owed, (await outbox.RetryAsync(given.MailId, write: true, default))!.State);
        await job.RunAsync(CancellationToken.None);
        Assert.Single(mail.Messages);
        Assert.Equal(MailState.Sent, (await outbox.RetryAsync(given.MailId, write: true, default))!.State);
        await job.RunAsync(CancellationToken.None);
        Assert.Single(mail.Messages);
    }

    [Theory] // RFC 5321: 452 passes, 553 does not; 530 (RFC 4954) is about our settings, which an operator mends.
    [InlineData(SmtpReplyCode.MailboxNameNotAllowed, false)]
    [InlineData(SmtpReplyCode.InsufficientStorage, true)]
    [InlineData(SmtpReplyCode.AuthenticationRequired, true)]
    public async Task A_mail_that_is_refused_for_now_is_tried_until_the_stated_time_is_over(SmtpReplyCode refusal, bool passes)
    {
        await using var database = await MigratedDatabase.CreateAsync(server);
        await using var services = await OweOneMailAsync(database);
        var outbox = services.GetRequiredService<OutboxStore>();
        var port = ProductProcess.FreePort();
        await using var mail = new MailServer(port) { Refusal = new SmtpResponse(refusal, "not now") };

        await Job(services, port).RunAsync(CancellationToken.None);
        Assert.Equal(passes ? MailState.Owed : MailState.GivenUp, Assert.Single((await outbox.ListAsync(null, 10, null, default)).Items).State);

        await DueAtOnceAsync(database);
        await ScalarAsync(database, "update outbox_mails set owed_time = clock_timestamp() - interval '5 hours' returning 1");
        await Job(services, port, TimeSpan.FromHours(6)).RunAsync(CancellationToken.None);
        Assert.Equal(passes ? MailState.Owed : MailState.GivenUp, Assert.Single((await outbox.ListAsync(null, 10, null, default)).Items).State);

        await DueAtOnceAsync(database);
        await Job(services, port, TimeSpan.FromHours(5)).RunAsync(CancellationToken.None);
        Assert.Equal(MailState.GivenUp, Assert.Single((await outbox.ListAsync(null, 10, null, default)).Items).State);
    }

    private static async Task<ServiceProvider> OweOneMailAsync(TestDatabase database)
    {
        var services = new ServiceCollection().AddMetrics().AddFleetTrendStore(database.ConnectionString).BuildServiceProvider();
        await services.GetRequiredService<ReportStore>().SaveAsync(Report(), ["shop@synthetic.example"], CancellationToken.None);
        return services;
    }

    /// <summary>The next attempt is due at once instead of after its pause.</summary>
    private static Task<long> DueAtOnceAsync(TestDatabase database) =>
        ScalarAsync(database, "update outbox_mails set next_attempt_time = clock_timestamp() returning 1");

    private static SendMailJob Job(ServiceProvider services, int port, TimeSpan? giveUpAfter = null)
    {
        var smtp = new SmtpSettings { Host = "127.0.0.1", Port = port, Security = SmtpSecurity.None };
        var settings = new MailSettings { Smtp = smtp, GiveUpAfter = giveUpAfter ?? TimeSpan.FromHours(72) };
        var composer = new MailComposer(services.GetRequiredService<ReportStore>(), settings);
        return new SendMailJob(
            services.GetRequiredService<OutboxStore>(), composer, new SmtpMailSender(smtp), services.GetRequiredService<JobLock>(),
            settings, TimeProvider.System, new WorkerMetrics(services.GetRequiredService<IMeterFactory>()), NullLogger<SendMailJob>.Instance);
    }

    private static StoredReport Report() => new()
    {
        Base = "*",
        PeriodStart = new DateOnly(2026, 3, 23),
        PeriodEnd = new DateOnly(2026, 3, 29),
        AsOf = new DateTimeOffset(2026, 3, 30, 6, 0, 0, TimeSpan.Zero),
        CodeVersion = "test",
        ParametersJson = "{}",
        Subject = "News of a synthetic fleet",
        Text = "Statistics support a decision; they never return an aircraft to service.\n",
        Html = "<p>Synthetic</p><img src=\"cid:levels.png\" alt=\"plot\">",
        DocumentJson = ReportDocumentJson.Write(new ReportDocument { Title = "Synthetic", Caution = "Synthetic", Origin = [], Sections = [] }),
        Plots = new Dictionary<string, byte[]>(StringComparer.Ordinal) { ["levels.png"] = Plot },
        MessageIdSeed = "test",
    };

    private static async Task<long> ScalarAsync(TestDatabase database, string sql)
    {
        await using var command = database.DataSource.CreateCommand(sql);
        return Convert.ToInt64(await command.ExecuteScalarAsync());
    }
}

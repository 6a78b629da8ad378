using FleetTrend.Hosting.Configuration;
using FleetTrend.IntegrationTests;
using FleetTrend.Store;
using FleetTrend.Store.Outbox;
using FleetTrend.Store.Reports;
using FleetTrend.Worker.Jobs;
using FleetTrend.Worker.Mail;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using MimeKit;

namespace FleetTrend.FaultTests;

[Collection(SharedPostgres.Name)]
public class MailServerDownTests(PostgresFixture server)
{
    private static readonly byte[] Plot = [0x89, 0x50, 0x4E, 0x47];

    [Fact]
    public async Task A_mail_that_the_server_did_not_take_goes_out_once_when_the_server_is_back()
    {
        await using var database = await server.CreateDatabaseAsync();
        await using var services = new ServiceCollection().AddFleetTrendStore(database.ConnectionString).BuildServiceProvider();
        await StoreSchema.MigrateAsync(services, CancellationToken.None);
        await services.GetRequiredService<ReportStore>().SaveAsync(Report(), ["shop@synthetic.example"], CancellationToken.None);
        var port = ProductProcess.FreePort();
        var job = Job(services, port);

        await job.RunAsync(CancellationToken.None);
        Assert.Equal(1L, await ScalarAsync(database, "select attempt_count from outbox_mails where sent_time is null and last_error is not null"));

        // The next attempt is due at once instead of after its pause.
        await ScalarAsync(database, "update outbox_mails set next_attempt_time = clock_timestamp() returning 1");
        await using var mail = new MailServer(port);
        await job.RunAsync(CancellationToken.None);
        await job.RunAsync(CancellationToken.None);

        var message = Assert.Single(mail.Messages);
        Assert.Equal("News of a synthetic fleet", message.Subject);
        Assert.Equal("shop@synthetic.example", Assert.Single(message.To.Mailboxes).Address);
        Assert.Contains("Statistics support a decision", message.TextBody, StringComparison.Ordinal);
        Assert.Contains("cid:standings.png", message.HtmlBody, StringComparison.Ordinal);
        Assert.Equal("standings.png", Assert.Single(message.BodyParts.OfType<MimePart>(), p => p.ContentType.MimeType == "image/png").ContentId);
        Assert.Equal(1L, await ScalarAsync(database, "select count(*) from outbox_mails where sent_time is not null"));
    }

    private static SendMailJob Job(ServiceProvider services, int port)
    {
        var smtp = new SmtpSettings { Host = "127.0.0.1", Port = port, Security = SmtpSecurity.None };
        var composer = new MailComposer(services.GetRequiredService<ReportStore>(), new MailSettings { Smtp = smtp });
        return new SendMailJob(
            services.GetRequiredService<OutboxStore>(), composer, new SmtpMailSender(smtp), services.GetRequiredService<JobLock>(),
            TimeProvider.System, NullLogger<SendMailJob>.Instance);
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
        Html = "<p>Synthetic</p><img src=\"cid:standings.png\" alt=\"plot\">",
        Plots = new Dictionary<string, byte[]>(StringComparer.Ordinal) { ["standings.png"] = Plot },
        MessageIdSeed = "test",
    };

    private static async Task<long> ScalarAsync(TestDatabase database, string sql)
    {
        await using var command = database.DataSource.CreateCommand(sql);
        return Convert.ToInt64(await command.ExecuteScalarAsync());
    }
}

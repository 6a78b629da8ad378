using AngleSharp.Html.Parser;
using FleetTrend.Contracts.V1;
using FleetTrend.Store.Outbox;
using FleetTrend.Store.Reports;
using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;
using MailState = FleetTrend.Contracts.V1.MailState;

namespace FleetTrend.IntegrationTests.Reports;

/// <summary>A mail that was given up is shown, and sent again when somebody asks.</summary>
[Collection(SharedPostgres.Name)]
public sealed class MailsTests(PostgresFixture postgres) : IAsyncLifetime
{
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(postgres);

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task A_mail_that_was_given_up_is_listed_and_on_the_page_until_it_is_asked_for_again()
    {
        var outbox = server.Services.GetRequiredService<OutboxStore>();
        var saved = await server.Services.GetRequiredService<ReportStore>().SaveAsync(Report(), ["gone@shop.example", "lead@shop.example"], default);
        var due = await outbox.TakeDueAsync(10, TimeSpan.FromHours(1), default);
        var gone = due.Single(m => m.Recipient == "gone@shop.example");
        await outbox.GiveUpAsync(gone.MailId, gone.Attempt, "550 no such <user>", default);
        await outbox.MarkSentAsync(due.Single(m => m != gone).MailId, default);

        var all = (await server.Reports.ListMailsAsync(new ListMailsRequest())).Mails;
        Assert.Equal(
            [MailState.GivenUp, MailState.Sent], all.OrderBy(m => m.Recipient, StringComparer.Ordinal).Select(m => m.State));
        var mail = Assert.Single((await server.Reports.ListMailsAsync(new ListMailsRequest { State = MailState.GivenUp })).Mails);
        Assert.Equal(($"{saved.ReportId}", "gone@shop.example", 1, "550 no such <user>"), (mail.ReportId, mail.Recipient, mail.AttemptCount, mail.LastError));
        Assert.NotNull(mail.EndTime);
        var onPage = Assert.IsType<string>(await MailsOnPageAsync());
        Assert.Contains($"{saved.ReportId}", onPage, StringComparison.Ordinal);
        Assert.DoesNotContain("@", onPage, StringComparison.Ordinal); // addresses are for who administers

        var checkedOnly = new RetryMailRequest { MailId = mail.MailId, ValidateOnly = true };
        Assert.Equal(MailState.Owed, (await server.Reports.RetryMailAsync(checkedOnly)).Mail.State);
        Assert.Empty(await outbox.TakeDueAsync(10, TimeSpan.FromHours(1), default));
        Assert.Equal(MailState.Owed, (await server.Reports.RetryMailAsync(new RetryMailRequest { MailId = mail.MailId })).Mail.State);
        Assert.Null(await MailsOnPageAsync());
        Assert.Equal(gone.MailId, Assert.Single(await outbox.TakeDueAsync(10, TimeSpan.FromHours(1), default)).MailId);
    }

    [Fact]
    public async Task Mails_are_listed_by_page()
    {
        await server.Services.GetRequiredService<ReportStore>().SaveAsync(
            Report(), [.. Enumerable.Range(0, 3).Select(i => $"mechanic-{i}@shop.example")], default);
        var first = await server.Reports.ListMailsAsync(new ListMailsRequest { PageSize = 2 });
        var second = await server.Reports.ListMailsAsync(new ListMailsRequest { PageSize = 2, PageToken = first.NextPageToken });

        Assert.Equal((2, 1, ""), (first.Mails.Count, second.Mails.Count, second.NextPageToken));
        Assert.Equal(3, first.Mails.Concat(second.Mails).Select(m => m.MailId).Distinct().Count());
    }

    [Theory]
    [InlineData("999999")]
    [InlineData("none")]
    [InlineData("-1")]
    public async Task A_mail_that_is_not_there_is_told_so(string mailId)
    {
        var error = await Assert.ThrowsAsync<RpcException>(async () => await server.Reports.RetryMailAsync(new RetryMailRequest { MailId = mailId }));

        Assert.Equal(StatusCode.NotFound, error.StatusCode);
    }

    [Fact]
    public async Task A_state_that_does_not_exist_is_refused()
    {
        var error = await Assert.ThrowsAsync<RpcException>(async () => await server.Reports.ListMailsAsync(new ListMailsRequest { State = (MailState)9 }));

        Assert.Equal(StatusCode.InvalidArgument, error.StatusCode);
    }

    private async Task<string?> MailsOnPageAsync()
    {
        using var parsed = await new HtmlParser().ParseDocumentAsync(await server.Http.GetStringAsync("/data-problems"));
        return parsed.QuerySelector("section[aria-labelledby=ft-mails]")?.TextContent;
    }

    private static StoredReport Report() => new()
    {
        Base = "*",
        PeriodStart = new DateOnly(2026, 3, 2),
        PeriodEnd = new DateOnly(2026, 3, 8),
        AsOf = new DateTimeOffset(2026, 3, 9, 6, 0, 0, TimeSpan.Zero),
        CodeVersion = "t",
        ParametersJson = "{}",
        Subject = "Synthetic",
        Text = "Synthetic",
        Html = "Synthetic",
        Plots = new Dictionary<string, byte[]>(StringComparer.Ordinal),
        MessageIdSeed = "t",
    };
}

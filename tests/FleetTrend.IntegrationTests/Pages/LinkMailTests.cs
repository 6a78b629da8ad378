using System.Collections.Concurrent;
using System.Net;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.Mail;
using FleetTrend.IntegrationTests.Access;
using FleetTrend.Store.People;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using MimeKit;

namespace FleetTrend.IntegrationTests.Pages;

/// <summary>Links for passwords by mail, where a mail server is configured.</summary>
[Collection(SharedPostgres.Name)]
public sealed class LinkMailTests(PostgresFixture postgres) : IAsyncLifetime, IDisposable
{
    private const string NewPassword = "other words than before";

    private readonly LineLog log = new();
    private readonly Mailbox mailbox = new();
    private ApiServer server = null!;

    public async Task InitializeAsync() => server = await ApiServer.StartAsync(
        postgres,
        settings => settings with { Mail = settings.Mail with { Smtp = new SmtpSettings { Host = "mail.shop.example" } } },
        builder =>
        {
            builder.Logging.AddProvider(log);
            builder.Services.AddSingleton<IMailSender>(mailbox);
        });

    public async Task DisposeAsync() => await server.DisposeAsync();

    public void Dispose() => log.Dispose();

    [Fact]
    public async Task Who_has_lost_a_password_gets_one_link_by_mail_and_nobody_learns_who_has_an_account()
    {
        var person = await server.AddPersonAsync("director", PersonRole.Director);
        var gone = await server.AddPersonAsync("gone", PersonRole.Reader);
        await using (var disable = server.Database.DataSource.CreateCommand("update people set disable_time = now() where name = 'gone'"))
            await disable.ExecuteNonQueryAsync();
        using var browser = new Browser(server);
        var shown = new HashSet<string>(StringComparer.Ordinal);
        foreach (var address in new[] { "nobody@shop.example", gone.Email!, "no address", person.Email!.ToUpperInvariant(), person.Email!, person.Email! })
        {
            using var asked = await browser.SendAsync("/forgot-password", "form", new() { ["address"] = address });
            shown.Add($"{asked.StatusCode} {asked.Headers.Location!.OriginalString}");
        }

        Assert.Equal(["Found /forgot-password?done=ask"], shown);
        await Eventually.TrueAsync(() => Task.FromResult(!mailbox.Mails.IsEmpty));
        var other = await server.AddPersonAsync("other", PersonRole.Reader);
        using (await browser.SendAsync("/forgot-password", "form", new() { ["address"] = other.Email! }))
        {
            // All before it are through then.
            await Eventually.TrueAsync(() => Task.FromResult(mailbox.Mails.Any(mail => mail.To.Contains(other.Email!, StringComparison.Ordinal))));
        }

        var (to, text) = Assert.Single(mailbox.Mails, mail => !mail.To.Contains(other.Email!, StringComparison.Ordinal));
        Assert.Contains(person.Email!, to, StringComparison.Ordinal);
        var link = LinkIn(text);

        using (var set = await browser.SendAsync(link, "form", new() { ["password"] = NewPassword }))
            Assert.Equal(HttpStatusCode.Redirect, set.StatusCode);
        using var signedIn = await new Browser(server).SignInAsync("director", NewPassword);
        Assert.Equal(HttpStatusCode.Redirect, signedIn.StatusCode);
        Assert.DoesNotContain(log.Lines, line => line.Contains(Uri.UnescapeDataString(link.Split("token=")[1]), StringComparison.Ordinal));
        Assert.Equal(0, await server.CountAsync("outbox_mails")); // which holds what it is given as it is
    }

    [Fact]
    public async Task Who_is_added_gets_the_link_by_mail_too_and_one_of_the_two_is_used()
    {
        using var administrator = await Browser.SignedInAsync(server, "administrator", PersonRole.Administrator);
        using var added = await administrator.SendAsync("/people", "form", new() { ["name"] = "lead", ["address"] = "lead@shop.example", ["role"] = "Director" });
        var handed = new Uri((await Browser.ReadAsync(added)).QuerySelector("[role=status] code")!.TextContent).PathAndQuery;
        await Eventually.TrueAsync(() => Task.FromResult(!mailbox.Mails.IsEmpty));
        var (to, text) = Assert.Single(mailbox.Mails);
        Assert.Contains("lead@shop.example", to, StringComparison.Ordinal);
        Assert.Contains("administrator added you as lead", text, StringComparison.Ordinal);
        using var lead = new Browser(server);
        using (var set = await lead.SendAsync(LinkIn(text), "form", new() { ["password"] = NewPassword }))
            Assert.Equal(HttpStatusCode.Redirect, set.StatusCode);
        using var other = await lead.GetAsync(handed);
        Assert.Equal(HttpStatusCode.NotFound, other.StatusCode);
    }

    [Fact]
    public async Task A_mail_that_is_not_taken_is_logged_and_the_next_one_goes_out()
    {
        var one = await server.AddPersonAsync("one", PersonRole.Reader);
        var two = await server.AddPersonAsync("two", PersonRole.Reader);
        mailbox.Refused = one.Email!;
        using var browser = new Browser(server);
        foreach (var address in new[] { one.Email!, two.Email! })
        {
            using var asked = await browser.SendAsync("/forgot-password", "form", new() { ["address"] = address });
            Assert.Equal(HttpStatusCode.Redirect, asked.StatusCode);
        }

        await Eventually.TrueAsync(() => Task.FromResult(!mailbox.Mails.IsEmpty));
        Assert.Contains(two.Email!, Assert.Single(mailbox.Mails).To, StringComparison.Ordinal);
        Assert.Single(log.Lines, line => line.Contains(" 3221:", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Without_a_mail_server_the_page_says_whom_to_ask()
    {
        await using var silent = await ApiServer.StartAsync(postgres);
        using var browser = new Browser(silent);
        var page = await browser.PageAsync("/forgot-password");
        Assert.Empty(page.QuerySelectorAll("form"));
        Assert.Contains("An administrator gives you a link", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    private static string LinkIn(string text) => new Uri(text.Split('\n').Single(line => line.Contains("/set-password?", StringComparison.Ordinal)).Trim()).PathAndQuery;

    /// <summary>Keeps what it is given, but for one address.</summary>
    private sealed class Mailbox : IMailSender
    {
        public ConcurrentQueue<(string To, string Text)> Mails { get; } = new();

        public string Refused { get; set; } = "";

        public Task SendAsync(MimeMessage message, CancellationToken ct)
        {
            var to = message.To.ToString();
            if (Refused.Length > 0 && to.Contains(Refused, StringComparison.Ordinal))
                throw new IOException("The mail server did not take the message.");
            Mails.Enqueue((to, message.TextBody!));
            return Task.CompletedTask;
        }
    }
}

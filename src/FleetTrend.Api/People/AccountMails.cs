using System.Threading.Channels;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Hosting.Mail;
using FleetTrend.Store.People;
using Microsoft.AspNetCore.Identity;
using MimeKit;

namespace FleetTrend.Api.People;

/// <summary>
/// Mails links for passwords where a mail server is configured. They are made after the answer was given, so that it tells nobody which
/// addresses are known, and they are in no outbox: the database never holds a link. One that the mail server does not take is
/// lost and logged; who waits asks again.
/// </summary>
internal sealed class AccountMails(IServiceScopeFactory scopes, HostSettings settings, IServiceProvider services, TimeProvider clock, ILogger<AccountMails> log)
    : BackgroundService
{
    /// <summary>How long a person gets no second mail that was asked for without signing in.</summary>
    public static readonly TimeSpan LeastBetween = TimeSpan.FromMinutes(5);

    private const int MostWaiting = 100;

    private readonly Channel<Wanted> waiting = Channel.CreateBounded<Wanted>(
        new BoundedChannelOptions(MostWaiting) { FullMode = BoundedChannelFullMode.DropWrite });
    private readonly Dictionary<long, DateTimeOffset> lastSent = [];

    /// <summary>Whether a mail server is configured.</summary>
    public bool IsPossible => settings.Mail.Smtp is not null;

    /// <summary>Mails a link to whoever has this address, if anybody has.</summary>
    public void Ask(string address) => Take(new Wanted(address, By: null));

    /// <summary>Mails a link to somebody who was added.</summary>
    /// <param name="person">Who.</param>
    /// <param name="by">The name of who added him.</param>
    public void Invite(Person person, string by)
    {
        ArgumentNullException.ThrowIfNull(person);
        Take(new Wanted(person.Email!, by));
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await foreach (var wanted in waiting.Reader.ReadAllAsync(stoppingToken))
        {
            try
            {
                await SendAsync(wanted, stoppingToken);
            }
            catch (Exception failure) when (!stoppingToken.IsCancellationRequested)
            {
                ApiLog.LinkNotMailed(log, failure.Message);
            }
        }
    }

    private void Take(Wanted wanted)
    {
        if (IsPossible)
            waiting.Writer.TryWrite(wanted);
    }

    private async Task SendAsync(Wanted wanted, CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        var person = await scope.ServiceProvider.GetRequiredService<UserManager<Person>>().FindByEmailAsync(wanted.Address);
        var now = clock.GetUtcNow();
        if (person is not { DisableTime: null } || (wanted.By is null && lastSent.TryGetValue(person.Id, out var before) && now - before < LeastBetween))
            return;
        lastSent[person.Id] = now;
        using var message = Compose(person, wanted.By, await scope.ServiceProvider.GetRequiredService<Accounts>().LinkAsync(person), now);
        await services.GetRequiredService<IMailSender>().SendAsync(message, ct);
        ApiLog.LinkMailed(log, person.Id);
    }

    private MimeMessage Compose(Person person, string? by, string link, DateTimeOffset now)
    {
        var why = by is null
            ? $"Somebody, most likely you, asked for a new password for {person.UserName} at {settings.PublicUrl}."
            : $"{by} added you as {person.UserName} at {settings.PublicUrl}.";
        var message = new MimeMessage
        {
            Date = now,
            Subject = "FleetTrend: choose a password",
            Body = new TextPart("plain")
            {
                Text = $"""
                    {why}

                    Choose a password here, once, within {PeopleRegistration.LinkLasts.TotalHours:0} hours:
                    {link}

                    If this means nothing to you, do nothing: nothing changes then.

                    """,
            },
        };
        message.From.Add(new MailboxAddress("FleetTrend", settings.Mail.From));
        message.To.Add(new MailboxAddress(person.UserName, person.Email!));
        message.Headers.Add(HeaderId.AutoSubmitted, "auto-generated");
        return message;
    }

    private sealed record Wanted(string Address, string? By);
}

using MimeKit;

namespace FleetTrend.Hosting.Mail;

/// <summary>Hands a message over: to a mail server, or to a folder where none is configured.</summary>
public interface IMailSender
{
    /// <summary>Hands one message over; returns once the other side has it.</summary>
    /// <exception cref="IOException">The other side did not take it; it may be tried again.</exception>
    /// <exception cref="MailRefusedException">The other side refuses it for good.</exception>
    Task SendAsync(MimeMessage message, CancellationToken ct);
}

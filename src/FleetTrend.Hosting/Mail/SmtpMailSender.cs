using FleetTrend.Hosting.Configuration;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;

namespace FleetTrend.Hosting.Mail;

/// <summary>Sends messages through the configured mail server.</summary>
public sealed class SmtpMailSender(SmtpSettings settings) : IMailSender
{
    private static readonly TimeSpan Timeout = TimeSpan.FromSeconds(30);

    /// <inheritdoc/>
    public async Task SendAsync(MimeMessage message, CancellationToken ct)
    {
        using var client = new SmtpClient { Timeout = (int)Timeout.TotalMilliseconds };
        try
        {
            await client.ConnectAsync(settings.Host, settings.Port, Security(settings.Security), ct);
            if (settings is { User: { } user, Password: { } password })
            {
                await client.AuthenticateAsync(user, password, ct);
            }

            await client.SendAsync(message, ct);
            await client.DisconnectAsync(quit: true, ct);
        }
        catch (SmtpCommandException refusal) when (IsForGood(refusal))
        {
            throw new MailRefusedException(
                $"The mail server {settings.Host}:{settings.Port} refuses the message for good: {(int)refusal.StatusCode} {refusal.Message}", refusal);
        }
        catch (Exception failure) when (failure is ProtocolException or CommandException or AuthenticationException
            or ServiceNotAuthenticatedException or NotSupportedException // no STARTTLS, or no sign-in that we know
            or SslHandshakeException or System.Net.Sockets.SocketException or TimeoutException)
        {
            throw new IOException($"The mail server {settings.Host}:{settings.Port} did not take the message: {failure.Message}", failure);
        }
    }

    /// <summary>5xx about sender, recipient or message (RFC 5321, 4.2.1). That it wants another sign-in (530 to 538) is about our settings:
    /// an operator mends them, and the mail goes out.</summary>
    private static bool IsForGood(SmtpCommandException refusal) =>
        (int)refusal.StatusCode is >= 500 and < 600 and not (>= 530 and <= 538)
        && refusal.ErrorCode is SmtpErrorCode.RecipientNotAccepted or SmtpErrorCode.SenderNotAccepted or SmtpErrorCode.MessageNotAccepted;

    private static SecureSocketOptions Security(SmtpSecurity security) => security switch
    {
        SmtpSecurity.StartTls => SecureSocketOptions.StartTls,
        SmtpSecurity.Tls => SecureSocketOptions.SslOnConnect,
        _ => SecureSocketOptions.None,
    };
}

namespace FleetTrend.Hosting.Configuration;

/// <summary>Where reports go: to a mail server when one is given, else as .eml files into a folder.</summary>
public sealed record MailSettings
{
    /// <summary>The mail server; null writes files into <see cref="Folder"/>.</summary>
    public SmtpSettings? Smtp { get; init; }

    /// <summary>Mailbox folder for .eml files.</summary>
    public string Folder { get; init; } = Path.Combine("data", "mail");

    /// <summary>Sender address.</summary>
    public string From { get; init; } = "fleettrend@localhost";
}

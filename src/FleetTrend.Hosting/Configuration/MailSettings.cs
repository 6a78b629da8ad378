namespace FleetTrend.Hosting.Configuration;

/// <summary>Where reports go: to a mail server when one is given, else as .eml files into a folder.</summary>
public sealed record MailSettings
{
    /// <summary>The mail server; null writes files into <see cref="Folder"/>.</summary>
    public SmtpSettings? Smtp { get; init; }

    /// <summary>Mailbox folder for .eml files.</summary>
    public string Folder { get; init; } = Path.Combine("data", "mail");

    /// <summary>How long a mail is tried that the mail server does not take, 1 to 720 h.</summary>
    public TimeSpan GiveUpAfter { get; init; } = TimeSpan.FromHours(72);

    /// <summary>Sender address.</summary>
    public string From { get; init; } = "fleettrend@localhost";
}

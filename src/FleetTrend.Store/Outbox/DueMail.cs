namespace FleetTrend.Store.Outbox;

/// <summary>A mail that this process may try to send until its lease ends.</summary>
/// <param name="MailId">Identifier.</param>
/// <param name="ReportId">The report it carries.</param>
/// <param name="Recipient">Mail address.</param>
/// <param name="MessageId">Message-ID without angle brackets; the same at every attempt.</param>
/// <param name="Attempt">1 for the first; hand it back with the result.</param>
/// <param name="OwedTime">Since when it is owed (UTC).</param>
public sealed record DueMail(long MailId, long ReportId, string Recipient, string MessageId, int Attempt, DateTimeOffset OwedTime);

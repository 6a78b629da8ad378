namespace FleetTrend.Hosting.Configuration;

/// <summary>Who gets the weekly report.</summary>
/// <param name="Address">Mail address.</param>
/// <param name="Base">Code of the base whose report it is; null for the report of every base.</param>
public sealed record MailRecipient(string Address, string? Base);

namespace FleetTrend.Store.Histories;

/// <summary>What must be known of a stored revision to judge another one.</summary>
internal sealed record StoredRevision(byte[] ContentHash, DateTimeOffset AcceptTime);

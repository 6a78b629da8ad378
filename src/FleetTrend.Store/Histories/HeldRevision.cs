namespace FleetTrend.Store.Histories;

/// <summary>What must be known of a waiting revision to judge the same one sent again.</summary>
/// <param name="Id">Identifier; null where the batch itself holds it and it is not written yet.</param>
/// <param name="ContentHash">SHA-256 of its content.</param>
/// <param name="HoldTime">Since when it waits (UTC).</param>
internal sealed record HeldRevision(long? Id, byte[] ContentHash, DateTimeOffset HoldTime);

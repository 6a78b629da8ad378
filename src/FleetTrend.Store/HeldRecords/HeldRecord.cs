namespace FleetTrend.Store.HeldRecords;

/// <summary>A record that waits.</summary>
/// <param name="Id">Ascends with the time of holding.</param>
/// <param name="Record">The record as it was sent; only intake can read it.</param>
/// <param name="HoldTime">Since when (UTC).</param>
public sealed record HeldRecord(long Id, byte[] Record, DateTimeOffset HoldTime);

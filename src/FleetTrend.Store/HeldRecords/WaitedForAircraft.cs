namespace FleetTrend.Store.HeldRecords;

/// <summary>A registration mark that is not registered and that records wait for.</summary>
/// <param name="Registration">The mark.</param>
/// <param name="WaitingCount">Records that wait for it.</param>
/// <param name="SinceTime">Since when the first of them waits (UTC).</param>
public sealed record WaitedForAircraft(string Registration, int WaitingCount, DateTimeOffset SinceTime);

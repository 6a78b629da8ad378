namespace FleetTrend.Store.Results;

/// <summary>What the latest trends have seen, and what not yet.</summary>
/// <param name="AsOf">Moment of the latest results (UTC); null before the first.</param>
/// <param name="NewestRecordTime">When the newest record was accepted (UTC), to within seconds where many come at once; null where there is none.</param>
/// <param name="IsRefreshPending">Whether a refresh is due.</param>
/// <param name="RefreshFailedTime">When the latest attempt at it failed (UTC); null where none did.</param>
public sealed record ResultFreshness(
    DateTimeOffset? AsOf, DateTimeOffset? NewestRecordTime, bool IsRefreshPending, DateTimeOffset? RefreshFailedTime);

using FleetTrend.Store.Results;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>How fresh results are, as the contract writes it.</summary>
internal static class FreshnessMessages
{
    /// <summary>Of results of the latest refresh.</summary>
    public static Wire.Freshness ToWire(this ResultFreshness freshness) => new()
    {
        AsOfTime = freshness.AsOf?.ToWire(),
        NewestRecordTime = freshness.NewestRecordTime?.ToWire(),
        RefreshPending = freshness.IsRefreshPending,
        RefreshFailedTime = freshness.RefreshFailedTime?.ToWire(),
    };
}

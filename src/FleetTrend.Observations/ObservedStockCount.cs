using FleetTrend.Records.Sources;
using FleetTrend.Records.Spares;

namespace FleetTrend.Observations;

/// <summary>A stock count as it stands.</summary>
/// <param name="Key">The record that tells of it.</param>
/// <param name="Count">What was counted, where and when.</param>
public sealed record ObservedStockCount(RecordKey Key, StockCount Count);

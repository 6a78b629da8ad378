using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.Spares;

/// <summary>What was counted on the shelf.</summary>
/// <param name="CountDate">The day of the newest count.</param>
/// <param name="Quantity">Parts counted.</param>
/// <param name="UsedSince">Parts of that number that went in at the base after that day.</param>
/// <param name="LeadTimeDays">Days from an order to its delivery; null where not told.</param>
/// <param name="Key">The record of the count.</param>
public sealed record SpareStock(DateOnly CountDate, int Quantity, int UsedSince, int? LeadTimeDays, RecordKey Key)
{
    /// <summary>What is left of the count; deliveries since are not known.</summary>
    public int OnHand => Math.Max(0, Quantity - UsedSince);
}

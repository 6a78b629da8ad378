namespace FleetTrend.Statistics.Decisions;

/// <summary>The smallest stock that covers a random demand with a stated chance.</summary>
/// <param name="Stock">Parts to hold.</param>
/// <param name="Covered">Chance that demand does not exceed them.</param>
public sealed record StockLevel(int Stock, double Covered);

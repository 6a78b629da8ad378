namespace FleetTrend.Reports.Plots;

/// <summary>One row of a plot of levels.</summary>
/// <param name="Label">The aircraft, with its counts.</param>
/// <param name="Ratio">Times the norm.</param>
/// <param name="Lower">Lower end of its interval; null where unbounded.</param>
/// <param name="Upper">Upper end; null where unbounded.</param>
/// <param name="IsFlagged">Whether it is drawn filled.</param>
public sealed record LevelDot(string Label, double Ratio, double? Lower, double? Upper, bool IsFlagged);

namespace FleetTrend.Cli.Analysis;

/// <summary>The common rate of units, with limits that hold where they differ and the dispersion of their counts.</summary>
internal sealed record PooledRate(double Rate, double Lower, double? Upper, double? Dispersion);

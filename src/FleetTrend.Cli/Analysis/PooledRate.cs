namespace FleetTrend.Cli.Analysis;

/// <summary>A rate with its exact limits.</summary>
internal sealed record PooledRate(double Rate, double Lower, double? Upper);

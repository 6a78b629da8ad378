namespace FleetTrend.Cli.Analysis;

/// <summary>A rate with its exact limits.</summary>
internal sealed record RateValues(double Value, double Lower, double Upper);

namespace FleetTrend.Cli.Analysis;

/// <summary>The mean cumulative function at one event age.</summary>
internal sealed record MeanCumulativeRow(double Time, double Value, double StandardError, double Lower, double Upper);

namespace FleetTrend.Cli.Analysis;

/// <summary>Mass in (lower, upper]; upper is null beyond the last look.</summary>
internal sealed record LifeMassRow(double Lower, double? Upper, double Mass, double Cdf);

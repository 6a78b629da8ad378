namespace FleetTrend.Cli.Analysis;

/// <summary>The age by which a share p has failed; an end that the data do not limit is null.</summary>
internal sealed record LifeQuantileRow(double P, double Value, double? Lower, double? Upper);

namespace FleetTrend.Cli.Analysis;

/// <summary>Gamma law of units' rates.</summary>
internal sealed record RatePriorValues(double Shape, double Rate);

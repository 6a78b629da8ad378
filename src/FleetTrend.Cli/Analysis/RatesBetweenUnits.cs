namespace FleetTrend.Cli.Analysis;

/// <summary>Units' rates as a whole: posterior means of their mean rate and of their coefficient of variation.</summary>
internal sealed record RatesBetweenUnits(double MeanRate, double CoefficientOfVariation);

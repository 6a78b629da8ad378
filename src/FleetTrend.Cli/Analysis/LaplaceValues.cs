namespace FleetTrend.Cli.Analysis;

/// <summary>Laplace trend test, two-sided chance.</summary>
internal sealed record LaplaceValues(double Statistic, double PValue);

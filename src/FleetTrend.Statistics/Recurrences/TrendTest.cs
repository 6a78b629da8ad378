namespace FleetTrend.Statistics.Recurrences;

/// <summary>A test of a constant rate against a trend with age.</summary>
/// <param name="Statistic">The test statistic.</param>
/// <param name="Events">Events that entered it.</param>
/// <param name="WorseningPValue">Chance, under a constant rate, of a statistic that speaks at least as much for a rising rate.</param>
/// <param name="ImprovingPValue">The same for a falling rate.</param>
public sealed record TrendTest(double Statistic, long Events, double WorseningPValue, double ImprovingPValue)
{
    /// <summary>Twice the smaller of the two one-sided chances, at most one.</summary>
    public double PValue => Math.Min(1, 2 * Math.Min(WorseningPValue, ImprovingPValue));
}

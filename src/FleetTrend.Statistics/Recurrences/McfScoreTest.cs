namespace FleetTrend.Statistics.Recurrences;

/// <summary>Test of equal mean cumulative functions of two groups.</summary>
/// <param name="Statistic">Robust score over its standard error; near standard normal, above zero where the second group has more events.</param>
/// <param name="SecondHigherPValue">Chance, were the functions equal, of a statistic at least as high.</param>
/// <param name="FirstHigherPValue">Chance, were they equal, of a statistic at least as low.</param>
public sealed record McfScoreTest(double Statistic, double SecondHigherPValue, double FirstHigherPValue)
{
    /// <summary>Two-sided chance.</summary>
    public double PValue => Math.Min(1, 2 * Math.Min(SecondHigherPValue, FirstHigherPValue));
}

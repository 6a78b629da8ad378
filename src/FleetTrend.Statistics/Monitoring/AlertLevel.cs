using MathNet.Numerics;

namespace FleetTrend.Statistics.Monitoring;

/// <summary>
/// An alert level, for those who must show one. It is named with its definition, because a level without its definition
/// says nothing; this library calls by <see cref="Changes.ChangeScorer"/>.
/// </summary>
/// <param name="Definition">How it was set.</param>
/// <param name="PerThousandHours">The level, events per 1,000 hours.</param>
/// <param name="Months">Months behind it.</param>
/// <param name="Events">Events behind it.</param>
/// <param name="Hours">Hours behind it.</param>
public sealed record AlertLevel(AlertDefinition Definition, double PerThousandHours, int Months, long Events, double Hours)
{
    private const double TailOfExactLevel = 0.025;

    /// <summary>One level.</summary>
    /// <param name="definition">How to set it.</param>
    /// <param name="months">Earlier months in order, the month to be judged not among them.</param>
    /// <param name="comingHours">Hours of the month to be judged, above zero; used by the Poisson definitions.</param>
    /// <returns>
    /// The level; <see cref="NotEstimableKind.NothingObserved"/> without hours, <see cref="NotEstimableKind.TooFewEvents"/>
    /// where there are too few months for the definition.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A month's events or hours are negative, or the coming hours are not above zero.</exception>
    /// <remarks>
    /// Source: Transport Canada AMA 571.101/1 appendix A (three-month average times 1.3); mean plus k standard deviations as
    /// in reliability programmes under FAA AC 120-17B (common practice, no formula read); Poisson chart,
    /// NIST/SEMATECH e-Handbook 6.3.3.1. Months without hours are left out.
    /// </remarks>
    public static Outcome<AlertLevel> Compute(AlertDefinition definition, IReadOnlyList<AlertMonth> months, double comingHours)
    {
        if (!(comingHours > 0) || double.IsInfinity(comingHours))
            throw new ArgumentOutOfRangeException(nameof(comingHours), comingHours, "The coming month has hours.");
        foreach (var month in months)
            Rates.RateEstimate.CheckExposure(month.Events, month.Hours);
        var flown = months.Where(m => m.Hours > 0).ToArray();
        var events = flown.Sum(m => (long)m.Events);
        var hours = flown.Sum(m => m.Hours);
        if (flown.Length == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No month has hours.");
        var needed = MonthsNeeded(definition);
        if (flown.Length < needed)
            return new NotEstimable(NotEstimableKind.TooFewEvents, events, $"This definition needs {needed} months with hours.");
        return new AlertLevel(definition, 1000 * PerHour(definition, flown, events / hours, comingHours), flown.Length, events, hours);
    }

    /// <summary>All definitions side by side, those that can be computed.</summary>
    /// <param name="months">Earlier months in order.</param>
    /// <param name="comingHours">Hours of the month to be judged, above zero.</param>
    /// <returns>One level per definition that has enough months.</returns>
    /// <exception cref="ArgumentOutOfRangeException">As <see cref="Compute"/>.</exception>
    /// <remarks>Source: as <see cref="Compute"/>.</remarks>
    public static IReadOnlyList<AlertLevel> All(IReadOnlyList<AlertMonth> months, double comingHours) =>
        [.. Enum.GetValues<AlertDefinition>().Select(d => Compute(d, months, comingHours)).Where(o => o.IsEstimated).Select(o => o.Value)];

    private static int MonthsNeeded(AlertDefinition definition) => definition switch
    {
        AlertDefinition.PooledPlusTwoPoissonDeviations or AlertDefinition.PooledPlusThreePoissonDeviations
            or AlertDefinition.ExactPoissonUpperTail => 1,
        AlertDefinition.MeanPlusTwoPopulationDeviations => 1,
        AlertDefinition.ThreeMonthPooledRateTimesOnePointThree or AlertDefinition.ThreeMonthAverageRateTimesOnePointThree => 3,
        AlertDefinition.ThreeMonthMeanPlusTwoDeviations => 4,
        _ => 2,
    };

    private static double PerHour(AlertDefinition definition, AlertMonth[] months, double pooled, double comingHours)
    {
        var rates = Array.ConvertAll(months, m => m.Events / m.Hours);
        return definition switch
        {
            AlertDefinition.MeanPlusTwoDeviations => rates.Average() + 2 * Deviation(rates, 1),
            AlertDefinition.MeanPlusTwoAndAHalfDeviations => rates.Average() + 2.5 * Deviation(rates, 1),
            AlertDefinition.MeanPlusThreeDeviations => rates.Average() + 3 * Deviation(rates, 1),
            AlertDefinition.MeanPlusTwoPopulationDeviations => rates.Average() + 2 * Deviation(rates, 0),
            AlertDefinition.ThreeMonthPooledRateTimesOnePointThree => 1.3 * RunningPooled(months).Average(),
            AlertDefinition.ThreeMonthAverageRateTimesOnePointThree => 1.3 * RunningAverage(rates).Average(),
            AlertDefinition.ThreeMonthMeanPlusTwoDeviations =>
                RunningAverage(rates).Average() + 2 * Deviation(RunningAverage(rates), 1),
            AlertDefinition.PooledPlusTwoPoissonDeviations => pooled + 2 * Math.Sqrt(pooled / comingHours),
            AlertDefinition.PooledPlusThreePoissonDeviations => pooled + 3 * Math.Sqrt(pooled / comingHours),
            AlertDefinition.ExactPoissonUpperTail => SmallestUnlikely(pooled * comingHours) / comingHours,
            _ => throw new ArgumentOutOfRangeException(nameof(definition), definition, "Unknown definition."),
        };
    }

    private static double[] RunningPooled(AlertMonth[] months) =>
        [.. Enumerable.Range(0, months.Length - 2).Select(k =>
            months[k..(k + 3)].Sum(m => m.Events) / months[k..(k + 3)].Sum(m => m.Hours))];

    private static double[] RunningAverage(double[] rates) =>
        [.. Enumerable.Range(0, rates.Length - 2).Select(k => rates[k..(k + 3)].Average())];

    private static double Deviation(double[] values, int lost)
    {
        var mean = values.Average();
        return Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - lost));
    }

    private static int SmallestUnlikely(double mean)
    {
        var count = Math.Max(1, (int)mean);
        while (mean > 0 && SpecialFunctions.GammaLowerRegularized(count, mean) > TailOfExactLevel)
            count++;
        return count;
    }
}

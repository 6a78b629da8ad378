namespace FleetTrend.Statistics.Monitoring;

/// <summary>The common ways of setting an alert level; the same months give levels that differ twofold.</summary>
public enum AlertDefinition
{
    /// <summary>Mean of monthly rates plus two standard deviations (divisor months less one).</summary>
    MeanPlusTwoDeviations,

    /// <summary>Mean of monthly rates plus two and a half standard deviations (divisor months less one).</summary>
    MeanPlusTwoAndAHalfDeviations,

    /// <summary>Mean of monthly rates plus three standard deviations (divisor months less one).</summary>
    MeanPlusThreeDeviations,

    /// <summary>Mean of monthly rates plus two standard deviations (divisor months).</summary>
    MeanPlusTwoPopulationDeviations,

    /// <summary>Average of the running three-month rates (events over hours), times 1.3.</summary>
    ThreeMonthPooledRateTimesOnePointThree,

    /// <summary>Average of the running three-month averages of monthly rates, times 1.3.</summary>
    ThreeMonthAverageRateTimesOnePointThree,

    /// <summary>Mean of the running three-month averages plus two of their standard deviations (divisor less one).</summary>
    ThreeMonthMeanPlusTwoDeviations,

    /// <summary>Pooled rate plus two Poisson standard deviations at the coming month's hours.</summary>
    PooledPlusTwoPoissonDeviations,

    /// <summary>Pooled rate plus three Poisson standard deviations at the coming month's hours.</summary>
    PooledPlusThreePoissonDeviations,

    /// <summary>
    /// Smallest count that the pooled rate reaches or exceeds with chance at most 2.5 percent at the coming month's hours, as
    /// a rate; the pooled rate is taken as known.
    /// </summary>
    ExactPoissonUpperTail,
}

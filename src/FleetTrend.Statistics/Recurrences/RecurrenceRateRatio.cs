using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// Events per hour of one group over those of another, counted per unit: the ratio of Poisson regression, with a standard error that allows
/// for units of different rates.
/// </summary>
public sealed record RecurrenceRateRatio
{
    /// <summary>Second group's rate over the first's, with the robust interval on the logarithm.</summary>
    public required IntervalEstimate Ratio { get; init; }

    /// <summary>Logarithm of the ratio.</summary>
    public required double LogRatio { get; init; }

    /// <summary>Standard error of the logarithm if counts were Poisson: too small where units differ.</summary>
    public required double ModelStandardError { get; init; }

    /// <summary>Standard error of the logarithm from the spread of the counts about their expectation.</summary>
    public required double RobustStandardError { get; init; }

    /// <summary>Events of the first group.</summary>
    public required long FirstEvents { get; init; }

    /// <summary>Hours of the first group.</summary>
    public required double FirstExposureHours { get; init; }

    /// <summary>Events of the second group.</summary>
    public required long SecondEvents { get; init; }

    /// <summary>Hours of the second group.</summary>
    public required double SecondExposureHours { get; init; }

    /// <summary>Estimates the ratio.</summary>
    /// <param name="first">Units of the first group.</param>
    /// <param name="second">Units of the second group.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>
    /// The ratio; <see cref="NotEstimableKind.NothingObserved"/> where a group was never watched,
    /// <see cref="NotEstimableKind.NoEvents"/> where neither had an event, <see cref="NotEstimableKind.NoFiniteMaximum"/> where one had none:
    /// <see cref="RateRatio"/> still limits the ratio then.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1).</exception>
    /// <remarks>Source: Poisson regression with the sandwich variance, Huber 1967, White 1982; two groups have it in closed form.</remarks>
    public static Outcome<RecurrenceRateRatio> Estimate(
        IReadOnlyList<RecurrenceUnit> first, IReadOnlyList<RecurrenceUnit> second, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        var (one, two) = (new UnitCounts(first), new UnitCounts(second));
        if (UnitCounts.Refusal(one, two) is { } refusal)
            return refusal;
        var log = Math.Log(two.Rate / one.Rate);
        var robust = Math.Sqrt(one.RobustVariance + two.RobustVariance);
        var reach = Quantile.NormalTwoSided(confidence) * robust;
        return new RecurrenceRateRatio
        {
            Ratio = new IntervalEstimate(Math.Exp(log), new Interval(Math.Exp(log - reach), Math.Exp(log + reach), confidence)),
            LogRatio = log,
            ModelStandardError = Math.Sqrt(1.0 / one.Events + 1.0 / two.Events),
            RobustStandardError = robust,
            FirstEvents = one.Events,
            FirstExposureHours = one.Hours,
            SecondEvents = two.Events,
            SecondExposureHours = two.Hours,
        };
    }
}

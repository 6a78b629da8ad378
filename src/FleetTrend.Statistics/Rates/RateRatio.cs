using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Rates;

/// <summary>
/// The first of two Poisson rates over the second, exact because it is conditional on the total: given the total, the
/// first count is binomial, and its chance fixes the ratio.
/// </summary>
public sealed record RateRatio
{
    /// <summary>Events in the first group.</summary>
    public required int FirstEvents { get; init; }

    /// <summary>Exposure of the first group, hours.</summary>
    public required double FirstExposureHours { get; init; }

    /// <summary>Events in the second group.</summary>
    public required int SecondEvents { get; init; }

    /// <summary>Exposure of the second group, hours.</summary>
    public required double SecondExposureHours { get; init; }

    /// <summary>First rate over second rate; positive infinity where the second group had no event.</summary>
    public required double Ratio { get; init; }

    /// <summary>Exact interval of the ratio; the upper end is infinite where the second group had no event.</summary>
    public required Interval Interval { get; init; }

    /// <summary>Chance, were the rates equal, of a first count at least as high as the one seen.</summary>
    public required double UpperPValue { get; init; }

    /// <summary>Chance, were the rates equal, of a first count at most as high as the one seen.</summary>
    public required double LowerPValue { get; init; }

    /// <summary>Chance, were the rates equal, of a count no more likely than the one seen.</summary>
    public required double TwoSidedPValue { get; init; }

    /// <summary>As <see cref="UpperPValue"/>, the count seen entering by half: less conservative, no longer exact.</summary>
    public required double MidUpperPValue { get; init; }

    /// <summary>Standardised first count; near standard normal for large counts and equal rates.</summary>
    public required double ScoreStatistic { get; init; }

    /// <summary>Ratio, exact conditional interval and exact tests of equal rates.</summary>
    /// <param name="firstEvents">Events in the first group, zero or more.</param>
    /// <param name="firstExposureHours">Its exposure, above zero.</param>
    /// <param name="secondEvents">Events in the second group, zero or more.</param>
    /// <param name="secondExposureHours">Its exposure, above zero.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>
    /// The ratio; <see cref="NotEstimableKind.NoEvents"/> where neither group had an event, and
    /// <see cref="NotEstimableKind.NothingObserved"/> where a group had no exposure.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative or infinite input, or confidence outside (0, 1).</exception>
    /// <remarks>
    /// Source: Przyborowski and Wilenski 1940, Biometrika 31 (the conditional test); Clopper and Pearson 1934,
    /// Biometrika 26 (its interval). The two-sided p sums all outcomes no more likely than the one seen.
    /// </remarks>
    public static Outcome<RateRatio> Estimate(
        int firstEvents, double firstExposureHours, int secondEvents, double secondExposureHours, double confidence = 0.95)
    {
        RateEstimate.CheckExposure(firstEvents, firstExposureHours);
        RateEstimate.CheckExposure(secondEvents, secondExposureHours);
        Confidences.Check(confidence);
        if (firstExposureHours == 0 || secondExposureHours == 0)
        {
            return new NotEstimable(
                NotEstimableKind.NothingObserved, (long)firstEvents + secondEvents, "One of the two groups has no exposure.");
        }
        if (firstEvents == 0 && secondEvents == 0)
            return new NotEstimable(NotEstimableKind.NoEvents, 0, "Neither group had an event: their ratio may be anything.");

        var total = checked(firstEvents + secondEvents);
        var share = firstExposureHours / (firstExposureHours + secondExposureHours);
        var null0 = new Binomial(share, total);
        var upper = UpperTail(firstEvents, secondEvents, share);
        var lower = LowerTail(firstEvents, secondEvents, share);
        return new RateRatio
        {
            FirstEvents = firstEvents,
            FirstExposureHours = firstExposureHours,
            SecondEvents = secondEvents,
            SecondExposureHours = secondExposureHours,
            Ratio = secondEvents == 0
                ? double.PositiveInfinity
                : firstEvents / firstExposureHours / (secondEvents / secondExposureHours),
            Interval = Limits(firstEvents, secondEvents, secondExposureHours / firstExposureHours, confidence),
            UpperPValue = upper,
            LowerPValue = lower,
            MidUpperPValue = upper - 0.5 * null0.Probability(firstEvents),
            TwoSidedPValue = NoMoreLikely(null0, firstEvents, total, share),
            ScoreStatistic = (firstEvents - total * share) / Math.Sqrt(total * share * (1 - share)),
        };
    }

    private static Interval Limits(int first, int second, double exposureRatio, double confidence)
    {
        var tail = (1 - confidence) / 2;
        var lower = first == 0 ? 0 : Quantile.BetaOdds(tail, first, second + 1.0);
        var upper = second == 0 ? double.PositiveInfinity : Quantile.BetaOdds(1 - tail, first + 1.0, second);
        return new Interval(lower * exposureRatio, upper * exposureRatio, confidence);
    }

    private static double UpperTail(int first, int second, double share) =>
        first == 0 ? 1 : MathNet.Numerics.SpecialFunctions.BetaRegularized(first, second + 1.0, share);

    private static double LowerTail(int first, int second, double share) =>
        second == 0 ? 1 : MathNet.Numerics.SpecialFunctions.BetaRegularized(second, first + 1.0, 1 - share);

    /// <summary>
    /// The near tail whole, plus of the far tail what is no more likely than the outcome seen. The distribution has one mode, so
    /// the far tail's edge is found by bisection. The slack keeps a mirror-image outcome that rounding makes a shade likelier.
    /// </summary>
    private static double NoMoreLikely(Binomial distribution, int seen, int total, double share)
    {
        const double slack = 1 + 1e-7;
        var limit = distribution.Probability(seen) * slack;
        var mode = Math.Min(total, (int)Math.Floor((total + 1) * share));
        if (distribution.Probability(mode) <= limit)
            return 1;
        if (seen > mode)
        {
            var far = LastBelow(distribution, limit, 0, mode);
            return UpperTail(seen, total - seen, share) + (far < 0 ? 0 : LowerTail(far, total - far, share));
        }
        var farUp = FirstBelow(distribution, limit, mode, total);
        return LowerTail(seen, total - seen, share) + (farUp > total ? 0 : UpperTail(farUp, total - farUp, share));
    }

    private static int LastBelow(Binomial distribution, double limit, int low, int high)
    {
        if (distribution.Probability(low) > limit)
            return low - 1;
        while (high - low > 1)
        {
            var middle = low + (high - low) / 2;
            if (distribution.Probability(middle) <= limit)
                low = middle;
            else
                high = middle;
        }
        return low;
    }

    private static int FirstBelow(Binomial distribution, double limit, int low, int high)
    {
        if (distribution.Probability(high) > limit)
            return high + 1;
        while (high - low > 1)
        {
            var middle = low + (high - low) / 2;
            if (distribution.Probability(middle) <= limit)
                high = middle;
            else
                low = middle;
        }
        return high;
    }
}

using FleetTrend.Statistics.Rates;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// A repairable unit whose expected number of events by age t is (t / <see cref="Scale"/>)^<see cref="Exponent"/>: above
/// one it gets worse, below one better. It is for units that are repaired and go on at their age, not for parts that are
/// renewed.
/// </summary>
public sealed record PowerLawProcess
{
    /// <summary>Events behind the fit.</summary>
    public required long Events { get; init; }

    /// <summary>Hours under observation behind the fit.</summary>
    public required double ExposureHours { get; init; }

    /// <summary>Maximum-likelihood exponent.</summary>
    public required double Exponent { get; init; }

    /// <summary>Interval of the exponent: how it was found is told by <see cref="IntervalMethod"/>.</summary>
    public required Interval ExponentInterval { get; init; }

    /// <summary>How <see cref="ExponentInterval"/> was found.</summary>
    public required PowerLawInterval IntervalMethod { get; init; }

    /// <summary>Standard error of the exponent from the curvature of its profile; exponent over root of events from age zero.</summary>
    public required double ExponentStandardError { get; init; }

    /// <summary>
    /// Normal interval of the exponent, for many events: exponent -/+ z standard errors. Source: Crow 1975, AMSAA Technical Report 138,
    /// section 3.3.
    /// </summary>
    public Interval ExponentWaldInterval
    {
        get
        {
            var reach = Quantile.NormalTwoSided(ExponentInterval.Confidence) * ExponentStandardError;
            return new Interval(Exponent - reach, Exponent + reach, ExponentInterval.Confidence);
        }
    }

    /// <summary>
    /// The exponent with its small-sample bias taken away. Exact where all units were watched from age zero; the same
    /// factor (n - 1) / n is an approximation with late entry; not defined for counts between looks.
    /// </summary>
    public required Outcome<double> ExponentUnbiased { get; init; }

    /// <summary>
    /// Age by which a unit expects one event, hours. With an exponent near zero it may be too small or too large for a number (0 or
    /// infinite, few digits just before): <see cref="LogScale"/> never is.
    /// </summary>
    public double Scale => Math.Exp(LogScale);

    /// <summary>Natural logarithm of <see cref="Scale"/>.</summary>
    public required double LogScale { get; init; }

    /// <summary>Interval of the scale, from the observed information on the logarithm.</summary>
    public required Interval ScaleInterval { get; init; }

    /// <summary>Log-likelihood at the maximum (for counts: without the factorial term).</summary>
    public required double LogLikelihood { get; init; }

    /// <summary>Twice the log-likelihood gained over a constant rate; chi-square with one degree of freedom under it.</summary>
    public required double LikelihoodRatio { get; init; }

    /// <summary>Chance of a gain at least as high under a constant rate.</summary>
    public double ConstantRatePValue => SpecialTail(LikelihoodRatio);

    /// <summary>Factor lambda of the mean count lambda · t^exponent, hours to the power of minus the exponent.</summary>
    public double Lambda => Math.Exp(-Exponent * LogScale);

    /// <summary>Expected events of one unit from age zero to an age.</summary>
    /// <param name="age">Age, hours.</param>
    public double MeanCount(double age) => Math.Exp(Exponent * (Math.Log(age) - LogScale));

    /// <summary>Expected events per hour at an age.</summary>
    /// <param name="age">Age, hours, above zero.</param>
    public double Intensity(double age) => Exponent / age * MeanCount(age);

    /// <summary>Fits units with exact event ages, each with windows of its own.</summary>
    /// <param name="units">The units.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <param name="truncation">What ended each unit's observation; with <see cref="Truncation.Event"/> the last event ends it.</param>
    /// <returns>The fit, or the reason why there is none (no events, fewer than two, or a likelihood that rises to an edge).</returns>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1).</exception>
    /// <remarks>
    /// Source: Crow 1975, AMSAA Technical Report 138 (maximum likelihood, conditional exponent, exact chi-square limits);
    /// MIL-HDBK-189C; IEC 61710; windows that start late as in Lawless 1987, Technometrics 29 (from memory).
    /// </remarks>
    public static Outcome<PowerLawProcess> Fit(
        IReadOnlyList<RecurrenceUnit> units, double confidence = 0.95, Truncation truncation = Truncation.Time)
    {
        Confidences.Check(confidence);
        var windows = units.SelectMany(u => u.Windows).ToList();
        if (windows.Count == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No unit was under observation for any time.");
        var likelihood = new PowerLawLikelihood(windows, units.SelectMany(u => u.EventTimes));
        var fit = Fitted(likelihood, windows.Sum(w => w.Length), confidence);
        if (!fit.IsEstimated)
            return fit;
        return ConditionalExponent.Build(units, truncation) is not { } conditional
            ? fit.Value with { ExponentUnbiased = fit.Value.Exponent * (fit.Value.Events - 1) / fit.Value.Events }
            : fit.Value with
            {
                ExponentUnbiased = conditional.Unbiased,
                ExponentInterval = conditional.Limits(confidence),
                IntervalMethod = PowerLawInterval.ExactChiSquare,
            };
    }

    /// <summary>Fits units for which only the number of events between looks is known.</summary>
    /// <param name="intervals">The spans between looks of all units.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>The fit with profile-likelihood limits, or the reason why there is none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1).</exception>
    /// <remarks>Source: MIL-HDBK-189 (1981), grouped data, maximum likelihood.</remarks>
    public static Outcome<PowerLawProcess> FitCounts(IReadOnlyList<CountInterval> intervals, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        if (intervals.Count == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No span between looks.");
        return Fitted(new PowerLawLikelihood(intervals), intervals.Sum(i => i.Stop - i.Start), confidence);
    }

    private static Outcome<PowerLawProcess> Fitted(PowerLawLikelihood likelihood, double hours, double confidence)
    {
        if (likelihood.Events == 0)
            return new NotEstimable(NotEstimableKind.NoEvents, 0, "No event: the rate has an upper limit, its trend is unknown.");
        if (likelihood.Events < 2)
            return new NotEstimable(NotEstimableKind.TooFewEvents, 1, "One event tells nothing about a trend.");
        var exponent = likelihood.Maximize();
        if (exponent == 0 || double.IsInfinity(exponent))
        {
            return new NotEstimable(
                NotEstimableKind.NoFiniteMaximum, likelihood.Events,
                exponent == 0
                    ? "The likelihood rises towards an exponent of zero: the events lie as early as they can."
                    : "The likelihood rises without end with the exponent: all events lie at the last ages watched.");
        }

        var depth = ChiSquared.InvCDF(1, confidence) / 2;
        var (lower, upper) = likelihood.Below(exponent, depth);
        var logScale = Math.Log(likelihood.Unit) - Math.Log(likelihood.ScaledMean(exponent)) / exponent;
        var margin = Quantile.NormalTwoSided(confidence) * LogScaleError(likelihood, exponent);
        var maximum = likelihood.Profile(exponent);
        return new PowerLawProcess
        {
            Events = likelihood.Events,
            ExposureHours = hours,
            Exponent = exponent,
            ExponentInterval = new Interval(lower, upper, confidence),
            IntervalMethod = PowerLawInterval.ProfileLikelihood,
            ExponentStandardError = 1 / Math.Sqrt(ProfileInformation(likelihood, exponent)),
            ExponentUnbiased = new NotEstimable(
                NotEstimableKind.NoInformation, likelihood.Events, "No bias correction is defined for counts between looks."),
            LogScale = logScale,
            ScaleInterval = new Interval(Math.Exp(logScale - margin), Math.Exp(logScale + margin), confidence),
            LogLikelihood = maximum,
            LikelihoodRatio = Math.Max(0, 2 * (maximum - likelihood.Profile(1))),
        };
    }

    /// <summary>
    /// Standard error of the log scale from the information in (log exponent, log scale):
    /// n + b²C, -b²B and b²n, with B and C the mean counts' moments in log age.
    /// </summary>
    private static double LogScaleError(PowerLawLikelihood likelihood, double exponent)
    {
        var (first, second) = likelihood.Moments(exponent);
        double n = likelihood.Events;
        var square = exponent * exponent;
        var shapeShape = likelihood.IsCounted ? square * SecondOfCounts(likelihood, exponent) : n + square * second;
        var determinant = shapeShape * square * n - square * square * first * first;
        return determinant > 0 ? Math.Sqrt(shapeShape / determinant) : 0;
    }

    private static double SecondOfCounts(PowerLawLikelihood likelihood, double exponent)
    {
        var (first, _) = likelihood.Moments(exponent);
        return ProfileInformation(likelihood, exponent) + first * first / likelihood.Events;
    }

    /// <summary>Minus the curvature of the profile; for counts the data term has no closed form worth keeping: by differences.</summary>
    private static double ProfileInformation(PowerLawLikelihood likelihood, double exponent)
    {
        double n = likelihood.Events;
        if (!likelihood.IsCounted)
        {
            var (first, second) = likelihood.Moments(exponent);
            return n / (exponent * exponent) + second - first * first / n;
        }

        const double step = 1e-3;
        return (2 * likelihood.Profile(exponent) - likelihood.Profile(exponent * (1 + step))
            - likelihood.Profile(exponent * (1 - step))) / (step * step * exponent * exponent);
    }

    private static double SpecialTail(double chiSquare) =>
        MathNet.Numerics.SpecialFunctions.GammaUpperRegularized(0.5, chiSquare / 2);
}

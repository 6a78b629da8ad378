using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// A repairable unit whose events per hour at age t are exp(<see cref="LogRate"/> + <see cref="Slope"/> t): beside the power law the other
/// customary course of a rate, finite at age zero. It is for units that are repaired and go on at their age.
/// </summary>
public sealed record LogLinearProcess
{
    private const double LargestSlope = 1e4;

    /// <summary>Events behind the fit.</summary>
    public required long Events { get; init; }

    /// <summary>Logarithm of the events per hour at age zero.</summary>
    public required double LogRate { get; init; }

    /// <summary>Growth of the logarithm of the rate per hour: above zero worse, below better.</summary>
    public required double Slope { get; init; }

    /// <summary>Normal interval of the slope, from the observed information.</summary>
    public required Interval SlopeInterval { get; init; }

    /// <summary>Log-likelihood at the maximum.</summary>
    public required double LogLikelihood { get; init; }

    /// <summary>Events per hour at an age.</summary>
    /// <param name="age">Age, hours.</param>
    public double Intensity(double age) => Math.Exp(LogRate + Slope * age);

    /// <summary>Fits units with exact event ages, each with windows of its own.</summary>
    /// <param name="units">The units.</param>
    /// <param name="confidence">Two-sided confidence, in (0, 1).</param>
    /// <returns>The fit, or the reason why there is none: nothing watched, fewer than two events, or all of them at an end of all ages.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1).</exception>
    /// <remarks>Source: Cox and Lewis 1966; Meeker and Escobar 1998, section 16.5.</remarks>
    public static Outcome<LogLinearProcess> Fit(IReadOnlyList<RecurrenceUnit> units, double confidence = 0.95)
    {
        Confidences.Check(confidence);
        var windows = units.SelectMany(u => u.Windows).ToArray();
        var times = units.SelectMany(u => u.EventTimes).ToArray();
        if (windows.Length == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No unit was under observation for any time.");
        if (times.Length < 2)
            return new NotEstimable(NotEstimableKind.TooFewEvents, times.Length, "Fewer than two events tell nothing about a trend.");

        // Given their number the events are draws from the distribution of age with density exp(slope t) in the windows: its mean is theirs.
        var unit = windows.Max(w => w.Stop);
        double n = times.Length;
        var mean = times.Sum() / n;
        double Gap(double scaled) => mean - Moments(windows, scaled / unit).Mean;
        if (Gap(-LargestSlope) <= 0 || Gap(LargestSlope) >= 0)
        {
            return new NotEstimable(
                NotEstimableKind.NoFiniteMaximum, times.Length, "All events lie at one end of the ages watched: the slope has no limit.");
        }

        var slope = RootSearch.Find(Gap, -LargestSlope, LargestSlope) / unit;
        var (logHours, _, variance) = Moments(windows, slope);
        var logRate = Math.Log(n) - logHours;
        var reach = Quantile.NormalTwoSided(confidence) / Math.Sqrt(n * variance);
        return new LogLinearProcess
        {
            Events = times.Length,
            LogRate = logRate,
            Slope = slope,
            SlopeInterval = new Interval(slope - reach, slope + reach, confidence),
            LogLikelihood = n * logRate + slope * n * mean - n,
        };
    }

    /// <summary>Log of the integral of exp(slope t) over all windows, and mean and variance of the age with that density.</summary>
    private static (double LogHours, double Mean, double Variance) Moments(ObservationWindow[] windows, double slope)
    {
        var logs = Array.ConvertAll(windows, w => slope * w.Start + Math.Log(w.Length) + LogOfMeanExp(slope * w.Length));
        var top = logs.Max();
        var (total, first, second) = (0.0, 0.0, 0.0);
        for (var k = 0; k < windows.Length; k++)
        {
            var share = Math.Exp(logs[k] - top);
            var (centre, spread) = WithinWindow(windows[k], slope);
            total += share;
            first += share * centre;
            second += share * (spread + centre * centre);
        }

        var mean = first / total;
        return (top + Math.Log(total), mean, Math.Max(0, second / total - mean * mean));
    }

    /// <summary>Mean and variance of the age within one window.</summary>
    private static (double Mean, double Variance) WithinWindow(ObservationWindow window, double slope)
    {
        var x = slope * window.Length;
        if (Math.Abs(x) < 1e-3)
        {
            return (
                window.Start + window.Length * (0.5 + x / 12 - x * x * x / 720),
                window.Length * window.Length * (1.0 / 12 - x * x / 240));
        }

        var tail = -1 / ElementaryFunctions.ExpM1(-x); // 1 / (1 - exp(-x))
        return (
            window.Start + window.Length * (tail - 1 / x),
            window.Length * window.Length * (1 / (x * x) - tail * (tail - 1)));
    }

    /// <summary>Logarithm of (exp(x) - 1) / x.</summary>
    private static double LogOfMeanExp(double x) =>
        Math.Abs(x) < 1e-3 ? x / 2 + x * x / 24
        : x > 0 ? x + Math.Log(-ElementaryFunctions.ExpM1(-x) / x)
        : Math.Log(ElementaryFunctions.ExpM1(x) / x);
}

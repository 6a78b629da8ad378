namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// Mean number of events per unit by age, for units that enter late, leave early and have gaps in observation. It is a
/// mean over units, not a probability, and passes one where units fail again: it is not minus the logarithm of a
/// survival curve.
/// </summary>
public sealed class MeanCumulativeFunction
{
    private readonly McfPoint[] points;

    private MeanCumulativeFunction(McfPoint[] points, IReadOnlyList<RecurrenceUnit> units, double confidence, McfVariance variance)
    {
        this.points = points;
        Units = units.Count;
        Events = points.Sum(p => (long)p.Events);
        ExposureHours = units.Sum(u => u.ExposureHours);
        Unwatched = FindUnwatched(units);
        From = units.Where(u => u.Windows.Count > 0).Min(u => u.Windows[0].Start);
        To = units.Where(u => u.Windows.Count > 0).Max(u => u.Windows[^1].Stop);
        Confidence = confidence;
        Variance = variance;
    }

    /// <summary>One point per distinct event age, ascending.</summary>
    public IReadOnlyList<McfPoint> Points => points;

    /// <summary>Units, those without events included.</summary>
    public int Units { get; }

    /// <summary>Events in all.</summary>
    public long Events { get; }

    /// <summary>Hours under observation, summed over units.</summary>
    public double ExposureHours { get; }

    /// <summary>Youngest age watched, hours: the function counts events after this age.</summary>
    public double From { get; }

    /// <summary>Oldest age watched, hours: nothing is known beyond.</summary>
    public double To { get; }

    /// <summary>
    /// Spans between <see cref="From"/> and <see cref="To"/> in which no unit was watched. Events there would have been
    /// missed, so the function is a lower bound beyond the first of them.
    /// </summary>
    public IReadOnlyList<ObservationWindow> Unwatched { get; }

    /// <summary>Confidence of the pointwise limits.</summary>
    public double Confidence { get; }

    /// <summary>How the standard errors were found.</summary>
    public McfVariance Variance { get; }

    /// <summary>Mean cumulative number of events by age, with robust standard errors at every event age.</summary>
    /// <param name="units">The units; a unit without events counts, a unit never watched does not.</param>
    /// <param name="confidence">Pointwise two-sided confidence, in (0, 1).</param>
    /// <param name="limits">How limits are set; the default holds the truth as often as stated for few units too (COVERAGE.md).</param>
    /// <param name="variance">How the standard errors are found; a single unit always has <see cref="McfVariance.Poisson"/>.</param>
    /// <returns>
    /// The function (without points where there was no event); <see cref="NotEstimableKind.NothingObserved"/>; with
    /// <see cref="McfVariance.Unbiased"/> <see cref="NotEstimableKind.NoInformation"/> where that variance does not exist or is negative.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">Confidence outside (0, 1).</exception>
    /// <remarks>
    /// Source: Nelson 1995, Technometrics 37 (the estimate and the unbiased variance); Lawless and Nadeau 1995, Technometrics 37 (the robust
    /// variance: the sum over units of squared influences, divisor n). Time grows as n log n in the number of events.
    /// </remarks>
    public static Outcome<MeanCumulativeFunction> Estimate(
        IReadOnlyList<RecurrenceUnit> units, double confidence = 0.95, McfLimits limits = McfLimits.LogarithmicStudent,
        McfVariance variance = McfVariance.Robust)
    {
        Confidences.Check(confidence);
        var watched = units.All(u => u.WindowSpan.Length > 0) ? units : [.. units.Where(u => u.WindowSpan.Length > 0)];
        if (watched.Count == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No unit was under observation for any time.");
        var found = watched.Count > 1 ? variance : McfVariance.Poisson;
        if (new McfSweep(watched, found).Run(confidence, limits) is { } points)
            return new MeanCumulativeFunction(points, watched, confidence, found);
        return new NotEstimable(
            NotEstimableKind.NoInformation, watched.Sum(u => (long)u.EventSpan.Length),
            "The unbiased variance does not exist at an age at which one unit is watched alone, or falls below zero: use the robust one.");
    }

    /// <summary>The point in force at an age: the last event age not above it; null before the first event.</summary>
    /// <param name="time">Age, hours.</param>
    public McfPoint? At(double time)
    {
        var low = 0;
        var high = points.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (points[middle].Time <= time)
                low = middle + 1;
            else
                high = middle;
        }
        return low == 0 ? null : points[low - 1];
    }

    private static List<ObservationWindow> FindUnwatched(IReadOnlyList<RecurrenceUnit> units)
    {
        var windows = units.SelectMany(u => u.Windows).ToArray();
        var starts = Array.ConvertAll(windows, w => w.Start);
        var stops = Array.ConvertAll(windows, w => w.Stop);
        Array.Sort(starts);
        Array.Sort(stops);
        var gaps = new List<ObservationWindow>();
        // After the k-th stop everything that has started has stopped exactly when the next start comes later.
        for (var k = 0; k + 1 < starts.Length; k++)
        {
            if (starts[k + 1] > stops[k])
                gaps.Add(new ObservationWindow(stops[k], starts[k + 1]));
        }
        return gaps;
    }
}

namespace FleetTrend.Statistics.Decisions;

/// <summary>
/// Chances of being in each of several states (good, leaking, eroded) by age, from units that enter late, leave early and
/// move back and forth. Transition ages are taken as exact: where they are known only to lie between looks, make the spans
/// with <see cref="LookHistory.Spans"/> under each of its stated assumptions and compare.
/// </summary>
public sealed class AalenJohansen
{
    private readonly StatePoint[] points;

    private AalenJohansen(double[] initial, StatePoint[] points, int units, long transitions)
    {
        Initial = initial;
        this.points = points;
        Units = units;
        Transitions = transitions;
    }

    /// <summary>Chance of each state before the first transition: shares of the units under observation then.</summary>
    public IReadOnlyList<double> Initial { get; }

    /// <summary>One point per distinct transition age, ascending.</summary>
    public IReadOnlyList<StatePoint> Points => points;

    /// <summary>Units.</summary>
    public int Units { get; }

    /// <summary>Transitions in all.</summary>
    public long Transitions { get; }

    /// <summary>Chances at an age.</summary>
    /// <param name="time">Age, hours.</param>
    public IReadOnlyList<double> At(double time)
    {
        var index = Array.FindLastIndex(points, p => p.Time <= time);
        return index < 0 ? Initial : points[index].Chances;
    }

    /// <summary>Expected hours in each state from age zero to an age.</summary>
    /// <param name="until">Age, hours, zero or more.</param>
    /// <returns>Hours by state; they sum to the age.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The age is negative.</exception>
    /// <remarks>Source: integral of the chances (textbook).</remarks>
    public IReadOnlyList<double> HoursInState(double until)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(until);
        var hours = new double[Initial.Count];
        var (from, chances) = (0.0, Initial);
        foreach (var point in points)
        {
            if (point.Time >= until)
                break;
            for (var s = 0; s < hours.Length; s++)
                hours[s] += (point.Time - from) * chances[s];
            (from, chances) = (point.Time, point.Chances);
        }
        for (var s = 0; s < hours.Length; s++)
            hours[s] += (until - from) * chances[s];
        return hours;
    }

    /// <summary>Estimates the chances.</summary>
    /// <param name="spans">Spans of all units, in any order.</param>
    /// <param name="states">Number of states, two or more.</param>
    /// <param name="standardErrors">
    /// Whether to find standard errors, which costs units times transition ages; without them they are reported as zero
    /// length lists.
    /// </param>
    /// <returns>The estimate; <see cref="NotEstimableKind.NothingObserved"/> without spans, <see cref="NotEstimableKind.NoEvents"/> without transitions.</returns>
    /// <exception cref="ArgumentException">A state is outside the number of states, or a unit's spans overlap.</exception>
    /// <remarks>
    /// Source: Aalen and Johansen 1978, Scandinavian Journal of Statistics 5; standard errors by the infinitesimal
    /// jackknife over units, Efron 1982.
    /// </remarks>
    public static Outcome<AalenJohansen> Estimate(IReadOnlyList<StateSpan> spans, int states, bool standardErrors = true)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(states, 2);
        if (spans.Count == 0)
            return new NotEstimable(NotEstimableKind.NothingObserved, 0, "No unit was under observation.");
        CheckSpans(spans, states);
        double[] times = [.. spans.Where(s => s.Next is not null).Select(s => s.Stop).Distinct().Order()];
        if (times.Length == 0)
            return new NotEstimable(NotEstimableKind.NoEvents, 0, "No unit changed its state.");

        var sweep = new StateSweep(spans, states, times[0], standardErrors);
        var initial = sweep.Chances();
        var found = Array.ConvertAll(times, sweep.Step);
        return new AalenJohansen(initial, found, sweep.Units, spans.Count(s => s.Next is not null));
    }

    private static void CheckSpans(IReadOnlyList<StateSpan> spans, int states)
    {
        foreach (var span in spans)
        {
            if (span.State >= states || span.Next >= states)
                throw new ArgumentException($"Unit {span.Unit} has a state beyond the {states} states.", nameof(spans));
        }
        foreach (var unit in spans.GroupBy(s => s.Unit, StringComparer.Ordinal))
        {
            var end = double.NegativeInfinity;
            foreach (var span in unit.OrderBy(s => s.Start))
            {
                if (span.Start < end)
                    throw new ArgumentException($"Spans of unit {span.Unit} overlap at {span.Start}.", nameof(spans));
                end = span.Stop;
            }
        }
    }
}

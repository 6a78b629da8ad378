namespace FleetTrend.Statistics.Decisions;

/// <summary>
/// What looks at one unit found: its state at each look. Between looks the state is unknown; <see cref="Spans"/> fills it
/// in under a stated assumption. The chance of a state by age lies between the answers for the earliest and the latest
/// timing where states only get worse; if the two differ by more than a decision can bear, the looks are too far apart.
/// </summary>
public sealed class LookHistory
{
    /// <summary>How far into the gap "just after the last look" lies: far enough to be an age of its own.</summary>
    private const double JustAfter = 1e-6;

    private readonly (double Age, int State)[] looks;

    /// <summary>Makes a history.</summary>
    /// <param name="unit">The unit's key.</param>
    /// <param name="looks">Age (hours, zero or more, rising) and state (numbered from zero) of each look; the first is its entry.</param>
    /// <exception cref="ArgumentException">Fewer than two looks, ages that do not rise, or a negative state.</exception>
    public LookHistory(string unit, IReadOnlyList<(double Age, int State)> looks)
    {
        ArgumentNullException.ThrowIfNull(unit);
        if (looks.Count < 2)
            throw new ArgumentException($"Unit {unit} has fewer than two looks.", nameof(looks));
        for (var k = 0; k < looks.Count; k++)
        {
            if (!double.IsFinite(looks[k].Age) || looks[k].Age < 0 || (k > 0 && looks[k].Age <= looks[k - 1].Age))
                throw new ArgumentException($"Look ages of unit {unit} are finite, zero or more, and rise.", nameof(looks));
            if (looks[k].State < 0)
                throw new ArgumentException($"Unit {unit} has a negative state.", nameof(looks));
        }
        Unit = unit;
        this.looks = [.. looks];
    }

    /// <summary>The unit's key.</summary>
    public string Unit { get; }

    /// <summary>Age and state of each look.</summary>
    public IReadOnlyList<(double Age, int State)> Looks => looks;

    /// <summary>Spans with every transition at an assumed age.</summary>
    /// <param name="timing">Where in the gap between two looks a transition is put.</param>
    /// <param name="throughAllStates">
    /// Whether a jump of more than one state up (good, next look eroded) is taken to have passed through the states between,
    /// spread evenly over the rest of the gap; otherwise it is one direct transition.
    /// </param>
    /// <returns>Adjoining spans from the first look to the last.</returns>
    /// <remarks>
    /// Source: a stated assumption, not an estimate: exact transition ages are not in the data. Bounds by earliest and
    /// latest timing follow Turnbull 1976 for the two-state case.
    /// </remarks>
    public IReadOnlyList<StateSpan> Spans(TransitionTiming timing, bool throughAllStates = false)
    {
        var spans = new List<StateSpan>();
        var (start, state) = looks[0];
        for (var k = 1; k < looks.Length; k++)
        {
            var gap = looks[k].Age - looks[k - 1].Age;
            var steps = Steps(state, looks[k].State, throughAllStates);
            for (var s = 0; s < steps.Count; s++)
            {
                var share = timing switch
                {
                    TransitionTiming.JustAfterLastLook => JustAfter * (s + 1),
                    TransitionTiming.Midpoint => (s + 1.0) / (steps.Count + 1),
                    _ => 1 - JustAfter * (steps.Count - 1 - s),
                };
                var at = share == 1 ? looks[k].Age : looks[k - 1].Age + share * gap;
                spans.Add(new StateSpan(Unit, start, at, state, steps[s]));
                (start, state) = (at, steps[s]);
            }
        }
        if (start < looks[^1].Age)
            spans.Add(new StateSpan(Unit, start, looks[^1].Age, state, null));
        return spans;
    }

    private static List<int> Steps(int from, int to, bool throughAllStates)
    {
        if (from == to)
            return [];
        return throughAllStates && to > from ? [.. Enumerable.Range(from + 1, to - from)] : [to];
    }
}

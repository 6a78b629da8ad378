namespace FleetTrend.Statistics.Decisions;

/// <summary>A unit in one state over the ages (start, stop], and what ended it.</summary>
public sealed record StateSpan
{
    /// <summary>Makes a span.</summary>
    /// <param name="unit">The unit's key.</param>
    /// <param name="start">Age at which the span begins, hours, not included.</param>
    /// <param name="stop">Age at which it ends, hours, included, above the start.</param>
    /// <param name="state">The state, numbered from zero.</param>
    /// <param name="next">The state entered at the stop; null where observation ended or paused there.</param>
    /// <exception cref="ArgumentOutOfRangeException">An age is not finite or out of order, or a state is negative.</exception>
    /// <exception cref="ArgumentException">The next state is the same one.</exception>
    public StateSpan(string unit, double start, double stop, int state, int? next)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var window = new Recurrences.ObservationWindow(start, stop);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(stop, start);
        ArgumentOutOfRangeException.ThrowIfNegative(state);
        if (next is < 0)
            throw new ArgumentOutOfRangeException(nameof(next), next, "States are numbered from zero.");
        if (next == state)
            throw new ArgumentException($"Unit {unit} cannot move from state {state} to itself.", nameof(next));
        Unit = unit;
        Start = window.Start;
        Stop = window.Stop;
        State = state;
        Next = next;
    }

    /// <summary>The unit's key.</summary>
    public string Unit { get; }

    /// <summary>Age at which the span begins, hours, not included.</summary>
    public double Start { get; }

    /// <summary>Age at which it ends, hours, included.</summary>
    public double Stop { get; }

    /// <summary>The state.</summary>
    public int State { get; }

    /// <summary>The state entered at the stop; null where observation ended or paused there.</summary>
    public int? Next { get; }
}

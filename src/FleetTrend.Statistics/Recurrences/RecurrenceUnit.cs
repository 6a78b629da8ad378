namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// One unit (a location, an aircraft) that can have the same event again: when it was watched, and when it had events.
/// </summary>
public sealed class RecurrenceUnit
{
    private readonly ObservationWindow[] windows;
    private readonly double[] eventTimes;

    /// <summary>Makes a unit from its windows and events, in any order. Windows that touch become one.</summary>
    /// <param name="windows">Spans of age under observation; a window of no length is dropped.</param>
    /// <param name="eventTimes">Ages of the events, hours; equal ages are several events at once.</param>
    /// <exception cref="ArgumentException">Windows overlap, or an event lies in no window.</exception>
    public RecurrenceUnit(IEnumerable<ObservationWindow> windows, IEnumerable<double> eventTimes)
    {
        this.windows = Joined(windows);
        this.eventTimes = [.. eventTimes];
        Array.Sort(this.eventTimes);
        CheckEvents(this.windows, this.eventTimes);
    }

    /// <summary>A unit watched without a gap.</summary>
    /// <param name="start">Age at which observation began, hours, not included.</param>
    /// <param name="stop">Age at which it ended, hours, included.</param>
    /// <param name="eventTimes">Ages of the events, hours.</param>
    /// <exception cref="ArgumentException">An event lies outside (start, stop].</exception>
    public RecurrenceUnit(double start, double stop, params IEnumerable<double> eventTimes)
        : this([new ObservationWindow(start, stop)], eventTimes)
    {
    }

    /// <summary>Windows in order of age, apart from each other.</summary>
    public IReadOnlyList<ObservationWindow> Windows => windows;

    /// <summary>Event ages in ascending order, ties repeated.</summary>
    public IReadOnlyList<double> EventTimes => eventTimes;

    /// <summary>Hours under observation.</summary>
    public double ExposureHours => windows.Sum(w => w.Length);

    internal ReadOnlySpan<ObservationWindow> WindowSpan => windows;

    internal ReadOnlySpan<double> EventSpan => eventTimes;

    private static ObservationWindow[] Joined(IEnumerable<ObservationWindow> windows)
    {
        ObservationWindow[] sorted = [.. windows];
        if (sorted.Length == 1)
            return sorted[0].Length > 0 ? sorted : [];
        Array.Sort(sorted, (a, b) => a.Start.CompareTo(b.Start));
        var joined = new List<ObservationWindow>(sorted.Length);
        foreach (var window in sorted)
        {
            if (window.Length <= 0)
                continue;
            if (joined.Count == 0 || joined[^1].Stop < window.Start)
                joined.Add(window);
            else if (joined[^1].Stop == window.Start)
                joined[^1] = new ObservationWindow(joined[^1].Start, window.Stop);
            else
                throw new ArgumentException($"Windows of one unit overlap at {window.Start}.", nameof(windows));
        }
        return [.. joined];
    }

    private static void CheckEvents(ObservationWindow[] windows, double[] eventTimes)
    {
        var at = 0;
        foreach (var time in eventTimes)
        {
            while (at < windows.Length && windows[at].Stop < time)
                at++;
            if (at == windows.Length || !windows[at].Contains(time))
            {
                throw new ArgumentException(
                    $"The event at {time} lies in no observation window (start < time <= stop).", nameof(eventTimes));
            }
        }
    }
}

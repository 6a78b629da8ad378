namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// Sums along each unit's windows: for weights w at the event ages, the sum over a unit's events of w/n less the sum over
/// the ages at which it was watched of w·d/n². With w = 1 it is the unit's influence on the mean cumulative function.
/// </summary>
internal sealed class McfInfluence
{
    private readonly double[] times;
    private readonly double[] jump;
    private readonly double[] drift;

    /// <summary>Prepares weights at the event ages of a function.</summary>
    public McfInfluence(IReadOnlyList<McfPoint> points, Func<McfPoint, double> weight)
    {
        times = [.. points.Select(p => p.Time)];
        jump = [.. points.Select(p => weight(p) / p.AtRisk)];
        drift = new double[points.Count + 1];
        for (var k = 0; k < points.Count; k++)
            drift[k + 1] = drift[k] + jump[k] * points[k].Events / points[k].AtRisk;
    }

    /// <summary>Influence of one unit up to and including an age.</summary>
    public double Sum(RecurrenceUnit unit, double until)
    {
        var sum = 0.0;
        foreach (var time in unit.EventSpan)
        {
            if (time > until)
                break;
            sum += jump[Array.BinarySearch(times, time)];
        }
        foreach (var window in unit.WindowSpan)
        {
            if (window.Start >= until)
                break;
            sum -= drift[Count(Math.Min(window.Stop, until))] - drift[Count(window.Start)];
        }
        return sum;
    }

    /// <summary>Event ages not above an age.</summary>
    private int Count(double age)
    {
        var at = Array.BinarySearch(times, age);
        return at >= 0 ? at + 1 : ~at;
    }
}

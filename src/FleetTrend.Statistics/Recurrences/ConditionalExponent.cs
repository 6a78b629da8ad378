using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>
/// The exponent given each unit's number of events: <paramref name="Informative"/> events over the sum of log(end / age).
/// </summary>
/// <param name="Informative">Events that carry information: all, or all but each unit's last where that ended it.</param>
/// <param name="SumLog">Sum of log(end of the unit / age of the event).</param>
internal sealed record ConditionalExponent(long Informative, double SumLog)
{
    /// <summary>Null where it does not exist: a unit entered late or had a gap, or no informative spread is left.</summary>
    public static ConditionalExponent? Build(IReadOnlyList<RecurrenceUnit> units, Truncation truncation)
    {
        var (count, sum) = (0L, 0.0);
        foreach (var unit in units)
        {
            if (unit.Windows.Count == 0)
                continue;
            if (unit.Windows.Count > 1 || unit.Windows[0].Start > 0)
                return null;
            var events = unit.EventSpan;
            var end = truncation == Truncation.Event && events.Length > 0 ? events[^1] : unit.Windows[0].Stop;
            count += truncation == Truncation.Event ? Math.Max(0, events.Length - 1) : events.Length;
            foreach (var time in events)
                sum += Math.Log(end / time);
        }
        return count >= 2 && sum > 0 ? new ConditionalExponent(count, sum) : null;
    }

    /// <summary>The conditional estimate.</summary>
    public double Estimate => Informative / SumLog;

    /// <summary>The estimate without bias.</summary>
    public double Unbiased => (Informative - 1) / SumLog;

    /// <summary>Exact limits.</summary>
    public Interval Limits(double confidence)
    {
        var tail = (1 - confidence) / 2;
        return new Interval(
            Quantile.Gamma(tail, Informative) / SumLog, Quantile.Gamma(1 - tail, Informative) / SumLog, confidence);
    }
}

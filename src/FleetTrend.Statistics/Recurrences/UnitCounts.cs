namespace FleetTrend.Statistics.Recurrences;

/// <summary>Events and hours of the units of one group; those never watched do not enter.</summary>
internal sealed class UnitCounts
{
    public UnitCounts(IReadOnlyList<RecurrenceUnit> units)
    {
        Units = [.. units.Select(u => (u.EventTimes.Count, u.ExposureHours)).Where(u => u.ExposureHours > 0)];
        Events = Units.Sum(u => (long)u.Events);
        Hours = Units.Sum(u => u.Hours);
    }

    public (int Events, double Hours)[] Units { get; }

    public long Events { get; }

    public double Hours { get; }

    public double Rate => Events / Hours;

    /// <summary>Variance of the logarithm of the rate from the spread of the counts.</summary>
    public double RobustVariance => Units.Sum(u => Math.Pow(u.Events - Rate * u.Hours, 2)) / ((double)Events * Events);

    /// <summary>Why two groups' rates have no finite ratio, or null.</summary>
    public static NotEstimable? Refusal(UnitCounts one, UnitCounts two)
    {
        var events = one.Events + two.Events;
        return one.Units.Length == 0 || two.Units.Length == 0
            ? new NotEstimable(NotEstimableKind.NothingObserved, events, "One of the two groups was not under observation.")
            : events == 0
                ? new NotEstimable(NotEstimableKind.NoEvents, 0, "Neither group had an event: their ratio may be anything.")
                : one.Events == 0 || two.Events == 0
                    ? new NotEstimable(NotEstimableKind.NoFiniteMaximum, events, "One of the two groups had no event: the ratio has no finite estimate.")
                    : null;
    }
}

namespace FleetTrend.Statistics.Monitoring;

/// <summary>When units would have been above an alert level, month by month, each month with what was known when it was over.</summary>
/// <remarks>
/// Source: the levels are those of <see cref="AlertLevel.Compute"/>; twelve months that roll, ICAO Doc 9760. A unit is judged only in months in which it
/// has hours, and only where its baseline is whole: twelve months in each of which the units have hours. The unit is part of its own baseline, as
/// practice has it. A month without an event is above no level.
/// </remarks>
public sealed class AlertReplay
{
    private const int Year = 12;
    private const double Rounding = 1e-9;

    private readonly int firstMonth;
    private readonly IReadOnlyList<IReadOnlyList<AlertMonth>> units;
    private readonly AlertMonth[] all;

    /// <summary>Makes it.</summary>
    /// <param name="firstMonth">Calendar month of month 0, from 1 to 12.</param>
    /// <param name="units">Months of each unit in order, one without hours where it was not there; all of one length.</param>
    /// <exception cref="ArgumentException">Units differ in their number of months.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The calendar month is none.</exception>
    public AlertReplay(int firstMonth, IReadOnlyList<IReadOnlyList<AlertMonth>> units)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(firstMonth, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(firstMonth, Year);
        ArgumentNullException.ThrowIfNull(units);
        if (units.Any(u => u.Count != units[0].Count))
            throw new ArgumentException("Units must have the same number of months.", nameof(units));
        this.firstMonth = firstMonth;
        this.units = units;
        all = [.. Enumerable.Range(0, units.Count == 0 ? 0 : units[0].Count)
            .Select(m => new AlertMonth(units.Sum(u => u[m].Events), units.Sum(u => u[m].Hours)))];
    }

    /// <summary>Calls by a rule.</summary>
    /// <param name="practice">The rule.</param>
    /// <returns>One list per unit, in order.</returns>
    public IReadOnlyList<IReadOnlyList<AlertCall>> Calls(AlertPractice practice)
    {
        ArgumentNullException.ThrowIfNull(practice);
        var common = practice.Baseline == AlertBaseline.LikeUnits ? LevelsOfLike(practice) : IsOwn(practice.Definition) ? null : LevelsOfAll(practice);
        return [.. units.Select(u => CallsOf(u, practice, month => common is null ? Level(practice, u, month) : common[month]))];
    }

    private static List<AlertCall> CallsOf(IReadOnlyList<AlertMonth> unit, AlertPractice practice, Func<int, double?> levelOf)
    {
        var calls = new List<AlertCall>();
        var (isCalled, inARow) = (false, 0);
        for (var m = 0; m < unit.Count; m++)
        {
            if (Judged(unit, practice, m) is not { } rate)
                continue;
            var level = rate > 0 ? levelOf(m) : null;
            if (level is { } above && IsAbove(practice.Definition, rate, above))
            {
                if (!isCalled && ++inARow == practice.MonthsInARow)
                {
                    calls.Add(new AlertCall(m, null, rate, above));
                    isCalled = true;
                }
            }
            else
            {
                if (isCalled)
                    calls[^1] = calls[^1] with { To = m };
                (isCalled, inARow) = (false, 0);
            }
        }

        return calls;
    }

    // A level that equals the rate does so but for rounding; the exact one is a count that calls when it is reached.
    private static bool IsAbove(AlertDefinition definition, double rate, double level) =>
        definition == AlertDefinition.ExactPoissonUpperTail ? rate >= level * (1 - Rounding) : rate > level * (1 + Rounding);

    /// <summary>The rate that is compared with the level; null where nothing can be judged.</summary>
    private static double? Judged(IReadOnlyList<AlertMonth> unit, AlertPractice practice, int month)
    {
        if (!(unit[month].Hours > 0))
            return null;
        if (practice.Baseline == AlertBaseline.LikeUnits)
            return IsWhole(unit, month - Year + 1) ? RateOf(unit, month - Year + 1, month) : null;
        switch (practice.Definition)
        {
            case AlertDefinition.ThreeMonthPooledRateTimesOnePointThree:
                return month < 2 ? null : RateOf(unit, month - 2, month);
            case AlertDefinition.ThreeMonthAverageRateTimesOnePointThree or AlertDefinition.ThreeMonthMeanPlusTwoDeviations:
                if (month < 2)
                    return null;
                var flown = Enumerable.Range(month - 2, 3).Where(m => unit[m].Hours > 0).ToList();
                return flown.Average(m => RateOf(unit, m, m));
            default:
                return RateOf(unit, month, month);
        }
    }

    private double?[] LevelsOfAll(AlertPractice practice)
    {
        var levels = new double?[all.Length];
        for (var m = 0; m < levels.Length; m++)
            levels[m] = Level(practice, all, m);
        return levels;
    }

    /// <summary>The level of a month, from all units together.</summary>
    private double? Level(AlertPractice practice, IReadOnlyList<AlertMonth> unit, int month)
    {
        var first = practice.Baseline == AlertBaseline.CalendarYearBefore ? month - (firstMonth - 1 + month) % Year - Year : month - Year;
        return unit[month].Hours > 0 && IsWhole(all, first)
            ? AlertLevel.Compute(practice.Definition, all[first..(first + Year)], unit[month].Hours).Match(l => (double?)l.PerThousandHours, _ => null)
            : null;
    }

    /// <summary>Mean and deviation of the twelve-month rates of the units take the place of those of months.</summary>
    private double?[] LevelsOfLike(AlertPractice practice)
    {
        var levels = new double?[all.Length];
        for (var m = Year - 1; m < levels.Length; m++)
        {
            AlertMonth[] years = [.. units.Where(u => IsWhole(u, m - Year + 1)).Select(u => Sum(u, m - Year + 1, m))];
            levels[m] = years.Length == 0 ? null : AlertLevel.Compute(practice.Definition, years, 1).Match(l => (double?)l.PerThousandHours, _ => null);
        }

        return levels;
    }

    private static bool IsOwn(AlertDefinition definition) => definition is AlertDefinition.PooledPlusTwoPoissonDeviations
        or AlertDefinition.PooledPlusThreePoissonDeviations or AlertDefinition.ExactPoissonUpperTail;

    private static bool IsWhole(IReadOnlyList<AlertMonth> months, int first)
    {
        if (first < 0)
            return false;
        for (var m = first; m < first + Year; m++)
        {
            if (!(months[m].Hours > 0))
                return false;
        }

        return true;
    }

    private static AlertMonth Sum(IReadOnlyList<AlertMonth> months, int first, int last)
    {
        var (events, hours) = (0, 0.0);
        for (var m = first; m <= last; m++)
            (events, hours) = (events + months[m].Events, hours + months[m].Hours);
        return new AlertMonth(events, hours);
    }

    private static double RateOf(IReadOnlyList<AlertMonth> months, int first, int last)
    {
        var sum = Sum(months, first, last);
        // As the level is computed: a count over the same hours gives the same number.
        return 1000 * (sum.Events / sum.Hours);
    }
}

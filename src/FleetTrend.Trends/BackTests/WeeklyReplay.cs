using FleetTrend.Statistics.Changes;
using FleetTrend.Trends.Changes;
using FleetTrend.Trends.Expectations;

namespace FleetTrend.Trends.BackTests;

/// <summary>Watches and flags of aircraft and bases, week by week.</summary>
/// <remarks>
/// The periods of four weeks of a refresh end on its own day. Weekly refreshes so go through four calendars in turn, each a week behind the next: a
/// call comes with the first of them that raises it and ends when none holds it any more.
/// </remarks>
internal static class WeeklyReplay
{
    private const int WeekDays = 7;
    private const int Calendars = HoursCalendar.PeriodDays / WeekDays;

    /// <summary>Calls in one class of condition.</summary>
    public static IEnumerable<BackTestCall> Find(TypeGroupInputs inputs, ConditionClass of, IEnumerable<WatchedLook> looks)
    {
        var expectations = inputs.Expectations;
        return Find(inputs, of, looks, expectations.ByAircraft, expectations.AircraftSpreads, () => inputs.AircraftLimits, isBase: false)
            .Concat(Find(inputs, of, looks, expectations.ByBase, expectations.BaseSpreads, () => inputs.BaseLimits, isBase: true));
    }

    private static IEnumerable<BackTestCall> Find(
        TypeGroupInputs inputs, ConditionClass of, IEnumerable<WatchedLook> looks, IReadOnlyList<ClassPanel> panels, IReadOnlyList<RateSpread> spreads,
        Func<ChangeLimits> limitsOf, bool isBase)
    {
        if (panels.Index().FirstOrDefault(p => p.Item.Class == of) is not { Item: { } panel, Index: var index })
            return [];
        var limits = limitsOf();
        var firstDay = inputs.Aircraft.Where(a => a.Hours.Days.Count > 0).Select(a => a.Hours.Days[0].Date).DefaultIfEmpty(inputs.AsOfDate).Min();
        var dated = new DatedLooks(panel, looks, l => isBase ? l.Base : l.Registration);
        var found = new List<BackTestCall>();
        for (var weeksBack = 0; weeksBack < Calendars; weeksBack++)
        {
            var lastDay = inputs.AsOfDate.AddDays(-weeksBack * WeekDays);
            var calendar = new HoursCalendar(firstDay, lastDay);
            if (dated.Until(lastDay, calendar) is not { } until)
                continue;
            var watch = new ChangeWatch(until, spreads[index], ChangeLimits.Prior);
            for (var u = 0; u < until.Units.Count; u++)
            {
                var before = found.Count;
                foreach (var (method, logLimit) in new[] { (BackTestMethod.Watch, limits.LogWatch), (BackTestMethod.Flag, limits.LogFlag) })
                {
                    if (method == BackTestMethod.Flag && found.Count == before)
                        break; // what was never watched was never flagged: the limit is higher
                    foreach (var (from, to) in watch.Calls(u, logLimit, Math.Log(ChangeLimits.Prior.LowerLine)))
                        found.Add(Call(inputs, of, calendar, until.Units[u].Name, watch.At(u, from)!, method, from, to, isBase));
                }
            }
        }

        return found.GroupBy(c => (c.Method, c.Registration, c.Base)).SelectMany(Joined);
    }

    /// <summary>Calls of the four calendars that stand at one time are one, as the first of them says it.</summary>
    private static IEnumerable<BackTestCall> Joined(IEnumerable<BackTestCall> calls)
    {
        BackTestCall? open = null;
        foreach (var next in calls.OrderBy(c => c.Date))
        {
            if (open is not null && (open.EndedDate is not { } ended || next.Date <= ended))
            {
                open = open with { EndedDate = open.EndedDate is { } a && next.EndedDate is { } b ? (a > b ? a : b) : null };
                continue;
            }

            if (open is not null)
                yield return open;
            open = next;
        }

        if (open is not null)
            yield return open;
    }

    private static BackTestCall Call(
        TypeGroupInputs inputs, ConditionClass of, HoursCalendar calendar, string unit, ChangeScore score, string tier, int from, int? to, bool isBase) => new()
        {
            Method = tier,
            TypeGroup = inputs.TypeGroup,
            Registration = isBase ? null : unit,
            Base = isBase ? unit : inputs.BaseOf(unit),
            Condition = of.Condition,
            Kind = of.Kind,
            Date = LastDay(calendar, from),
            EndedDate = to is { } period ? LastDay(calendar, period) : null,
            Part = score.Scope.Name,
            SinceDate = calendar.FirstDay(score.Since),
            Ratio = score.Ratio,
            FoundSince = score.FoundSince,
            ExpectedSince = score.ExpectedSince,
        };

    private static DateOnly LastDay(HoursCalendar calendar, int period) => calendar.FirstDay(period).AddDays(HoursCalendar.PeriodDays - 1);
}

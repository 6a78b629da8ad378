using FleetTrend.Statistics.Monitoring;
using FleetTrend.Trends.Expectations;

namespace FleetTrend.Trends.BackTests;

/// <summary>Alert levels of aircraft and bases, month by month: the findings that the score counts too, over flight hours.</summary>
internal sealed class MonthlyReplay
{
    private readonly TypeGroupInputs inputs;
    private readonly DateOnly start;
    private readonly int months;
    private readonly List<(string Registration, string Base, double[] Hours)> flown = [];
    private readonly List<UnitMonths> panels = [];

    public MonthlyReplay(TypeGroupInputs inputs, WatchedHours hours)
    {
        this.inputs = inputs;
        if (hours.FirstDate is not { } first)
            return;
        start = new DateOnly(first.Year, first.Month, 1);
        months = WatchedHours.MonthsBetween(start, inputs.AsOfDate.AddDays(1)); // only a month that is over can be judged
        if (months > 0)
            flown.AddRange(hours.ByMonth(months));
    }

    /// <summary>Adds a class of condition.</summary>
    public void Add(ConditionClass of, IEnumerable<WatchedLook> looks)
    {
        if (months <= 0)
            return;
        panels.Add(Panel(of, isBase: false, flown.Select(f => (f.Registration, f.Hours)), looks.Select(l => (l.Registration, l))));
        if (inputs.Expectations.ByBase.Count > 0)
            panels.Add(Panel(of, isBase: true, flown.Select(f => (f.Base, f.Hours)), looks.Select(l => (l.Base, l))));
    }

    /// <summary>Calls by a rule.</summary>
    public IEnumerable<BackTestCall> Find(AlertPractice practice)
    {
        foreach (var panel in panels)
        {
            foreach (var (unit, calls) in panel.Units.Zip(panel.Replay.Calls(practice)))
            {
                foreach (var call in calls)
                {
                    yield return new BackTestCall
                    {
                        Method = practice.Name,
                        TypeGroup = inputs.TypeGroup,
                        Registration = panel.IsBase ? null : unit,
                        Base = panel.IsBase ? unit : inputs.BaseOf(unit),
                        Condition = panel.Class.Condition,
                        Kind = panel.Class.Kind,
                        Date = LastDay(call.From),
                        EndedDate = call.To is { } to ? LastDay(to) : null,
                        PerThousandHours = call.Rate,
                        LevelPerThousandHours = call.Level,
                    };
                }
            }
        }
    }

    private DateOnly LastDay(int month) => start.AddMonths(month + 1).AddDays(-1);

    private UnitMonths Panel(
        ConditionClass of, bool isBase, IEnumerable<(string Unit, double[] Hours)> flown, IEnumerable<(string Unit, WatchedLook Look)> looks)
    {
        var hours = new SortedDictionary<string, double[]>(StringComparer.Ordinal);
        foreach (var (unit, own) in flown)
        {
            if (!hours.TryGetValue(unit, out var sum))
                hours.Add(unit, sum = new double[months]);
            for (var m = 0; m < months; m++)
                sum[m] += own[m];
        }

        var events = hours.Keys.ToDictionary(u => u, _ => new int[months], StringComparer.Ordinal);
        foreach (var (unit, look) in looks)
        {
            var month = WatchedHours.MonthsBetween(start, look.Date);
            if (look.Found > 0 && month >= 0 && month < months && events.TryGetValue(unit, out var own))
                own[month] += look.Found;
        }

        List<string> units = [.. hours.Keys];
        return new UnitMonths(
            of, isBase, units,
            new AlertReplay(start.Month, [.. units.Select(u => events[u].Zip(hours[u], (e, h) => new AlertMonth(e, h)).ToArray())]));
    }

    private sealed record UnitMonths(ConditionClass Class, bool IsBase, IReadOnlyList<string> Units, AlertReplay Replay);
}

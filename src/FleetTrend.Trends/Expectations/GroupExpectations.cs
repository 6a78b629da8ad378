using FleetTrend.Records.Findings;
using FleetTrend.Statistics.Changes;

namespace FleetTrend.Trends.Expectations;

/// <summary>
/// One currency for every class of condition of a type group: found, and exposure by which the others tell what was expected, per look and
/// location; with aircraft and with bases as units.
/// </summary>
internal sealed class GroupExpectations
{
    private GroupExpectations(IReadOnlyList<ClassPanel> byAircraft, IReadOnlyList<ClassPanel> byBase)
    {
        ByAircraft = byAircraft;
        ByBase = byBase;
        AircraftSpreads = [.. byAircraft.Select(p => RateSpread.Estimate(p.Panel))];
        BaseSpreads = [.. byBase.Select(p => RateSpread.Estimate(p.Panel, SpreadOf(p.Class)))];
    }

    /// <summary>One panel per class, aircraft as units.</summary>
    public IReadOnlyList<ClassPanel> ByAircraft { get; }

    /// <summary>One panel per class, bases as units; none where there is one base.</summary>
    public IReadOnlyList<ClassPanel> ByBase { get; }

    /// <summary>How aircraft differ, by panel.</summary>
    public IReadOnlyList<RateSpread> AircraftSpreads { get; }

    /// <summary>How bases differ, by panel.</summary>
    public IReadOnlyList<RateSpread> BaseSpreads { get; }

    /// <summary>Panels of <see cref="FindClasses"/>: all looks, year in, year out.</summary>
    /// <param name="inputs">The type group.</param>
    public static GroupExpectations Build(TypeGroupInputs inputs) => Build(inputs, (_, look) => look, (_, look) => look);

    /// <summary>The same with looks as they count towards flags; where no flag was closed, those of the type group as they are.</summary>
    /// <param name="inputs">The type group.</param>
    public static GroupExpectations BuildRestarted(TypeGroupInputs inputs)
    {
        var restarted = new RestartedLooks(inputs);
        return restarted.Any ? Build(inputs, restarted.OfAircraft, restarted.OfBase) : inputs.Expectations;
    }

    private static GroupExpectations Build(
        TypeGroupInputs inputs, Func<ConditionClass, WatchedLook, WatchedLook?> ofAircraft, Func<ConditionClass, WatchedLook, WatchedLook?> ofBase)
    {
        var firstDay = inputs.Aircraft.Where(a => a.Hours.Days.Count > 0).Select(a => a.Hours.Days[0].Date).DefaultIfEmpty(inputs.AsOfDate).Min();
        var calendar = new HoursCalendar(firstDay, inputs.AsOfDate);
        List<ClassPanel> byAircraft = [];
        List<ClassPanel> byBase = [];
        foreach (var (of, looks) in FindClasses(inputs))
        {
            var (aircraft, bases) = (new LooksByUnit(calendar), new LooksByUnit(calendar));
            foreach (var look in looks)
            {
                if (ofAircraft(of, look) is { } own)
                    aircraft.Add(own.Registration, own);
                if (ofBase(of, look) is { } there)
                    bases.Add(there.Base, there);
            }

            if (aircraft.Found > 0)
                byAircraft.Add(ClassPanel.Build(of, calendar, aircraft));
            if (bases.Found > 0)
                byBase.Add(ClassPanel.Build(of, calendar, bases));
        }

        return new GroupExpectations(byAircraft, byBase.Exists(p => p.Panel.Units.Count > 1) ? byBase : []);
    }

    private RateSpread? SpreadOf(ConditionClass of) => ByAircraft.Index().Where(p => p.Item.Class == of).Select(p => AircraftSpreads[p.Index]).FirstOrDefault();

    /// <summary>
    /// Classes with at least one finding, with their looks. Failures of a kind of part are a class of its own where lives of known age hold most of
    /// them; else, as all other conditions, they come at a rate.
    /// </summary>
    public static IEnumerable<(ConditionClass Class, IEnumerable<WatchedLook> Looks)> FindClasses(TypeGroupInputs inputs)
    {
        HashSet<string> withLives = new(StringComparer.Ordinal);
        var kinds = inputs.Aircraft.SelectMany(a => a.Lives).Where(l => l.TypeGroup == inputs.TypeGroup).Select(l => l.Kind)
            .DistinctBy(k => k.Name, StringComparer.Ordinal);
        foreach (var kind in kinds.OrderBy(k => k.Name, StringComparer.Ordinal))
        {
            var failures = inputs.Aircraft.SelectMany(a => a.Events)
                .Count(e => e.TypeGroup == inputs.TypeGroup && e.Kind.Name == kind.Name && !e.PresentAtEntry && kind.Failures.Contains(e.Condition));
            if (LifeLooks.Find(inputs, kind.Name) is not { } looks || 2 * looks.Sum(l => l.Found) < failures)
                continue;
            withLives.Add(kind.Name);
            if (looks.Any(l => l.Found > 0))
                yield return (new ConditionClass(null, kind.Name), looks);
        }

        foreach (var condition in inputs.Observations.Conditions)
        {
            var looks = inputs.RateLooks.Find(condition, kind => !withLives.Contains(kind) || !IsFailure(inputs, kind, condition));
            if (looks.Any(l => l.Found > 0))
                yield return (new ConditionClass(condition, null), looks);
        }
    }

    private static bool IsFailure(TypeGroupInputs inputs, string kind, Condition condition) =>
        inputs.Observations.Locations.First(l => l.Kind.Name == kind).Kind.Failures.Contains(condition);
}

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
        BaseSpreads = [.. byBase.Zip(AircraftSpreads).Select(p => RateSpread.Estimate(p.First.Panel, p.Second))];
    }

    /// <summary>One panel per class, aircraft as units.</summary>
    public IReadOnlyList<ClassPanel> ByAircraft { get; }

    /// <summary>One panel per class, bases as units; none where there is one base.</summary>
    public IReadOnlyList<ClassPanel> ByBase { get; }

    /// <summary>How aircraft differ, by panel.</summary>
    public IReadOnlyList<RateSpread> AircraftSpreads { get; }

    /// <summary>How bases differ, by panel.</summary>
    public IReadOnlyList<RateSpread> BaseSpreads { get; }

    /// <summary>Panels of <see cref="FindClasses"/>.</summary>
    public static GroupExpectations Build(TypeGroupInputs inputs)
    {
        var classes = FindClasses(inputs);
        var firstDay = classes.SelectMany(c => c.Looks).Select(l => l.Date).DefaultIfEmpty(inputs.AsOfDate).Min();
        var calendar = new HoursCalendar(firstDay, inputs.AsOfDate);
        var hasBases = classes.SelectMany(c => c.Looks).Select(l => l.Base).Distinct(StringComparer.Ordinal).Count() > 1;
        return new GroupExpectations(
            [.. classes.Select(c => ClassPanel.Build(c.Class, calendar, c.Looks, l => l.Registration))],
            hasBases ? [.. classes.Select(c => ClassPanel.Build(c.Class, calendar, c.Looks, l => l.Base))] : []);
    }

    /// <summary>
    /// Classes with at least one finding, with their looks. Failures of a kind of part are a class of its own where lives of known age hold most of
    /// them; else, as all other conditions, they come at a rate.
    /// </summary>
    public static IReadOnlyList<(ConditionClass Class, IReadOnlyList<WatchedLook> Looks)> FindClasses(TypeGroupInputs inputs)
    {
        List<(ConditionClass Class, IReadOnlyList<WatchedLook> Looks)> classes = [];
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
            classes.Add((new ConditionClass(null, kind.Name), looks));
        }

        foreach (var condition in inputs.Observations.Conditions)
        {
            var looks = RateLooks.Find(inputs, condition, kind => !withLives.Contains(kind) || !IsFailure(inputs, kind, condition)).ToList();
            classes.Add((new ConditionClass(condition, null), looks));
        }

        classes.RemoveAll(c => c.Looks.Sum(l => l.Found) == 0);
        return classes;
    }

    private static bool IsFailure(TypeGroupInputs inputs, string kind, Condition condition) =>
        inputs.Observations.Locations.First(l => l.Kind.Name == kind).Kind.Failures.Contains(condition);
}

using FleetTrend.Statistics.Changes;

namespace FleetTrend.Trends.Expectations;

/// <summary>One class of condition, with aircraft or bases as units: found and exposure by unit, location and period.</summary>
/// <param name="Class">The class.</param>
/// <param name="Calendar">The periods.</param>
/// <param name="Locations">Paths, in the order of the panel's indices.</param>
/// <param name="Panel">For the score.</param>
internal sealed record ClassPanel(ConditionClass Class, HoursCalendar Calendar, IReadOnlyList<string> Locations, WatchedPanel Panel)
{
    /// <summary>Name of the whole unit among its parts.</summary>
    public const string Whole = "";

    /// <summary>Puts looks together.</summary>
    /// <param name="of">The class.</param>
    /// <param name="calendar">The periods.</param>
    /// <param name="looks">The looks.</param>
    /// <param name="unitOf">The unit of a look.</param>
    public static ClassPanel Build(ConditionClass of, HoursCalendar calendar, IEnumerable<WatchedLook> looks, Func<WatchedLook, string> unitOf)
    {
        var byUnit = new LooksByUnit(calendar);
        foreach (var look in looks)
            byUnit.Add(unitOf(look), look);
        return Build(of, calendar, byUnit);
    }

    /// <summary>The panel of looks that are put together.</summary>
    /// <param name="of">The class.</param>
    /// <param name="calendar">The periods.</param>
    /// <param name="looks">The looks.</param>
    public static ClassPanel Build(ConditionClass of, HoursCalendar calendar, LooksByUnit looks)
    {
        var locations = looks.Locations();
        var panel = new WatchedPanel(
            calendar.Periods, HoursCalendar.PeriodDays / 365.25, ChangeScope.Spread(Whole, locations, SubAssemblies(locations)), [.. looks.Units(locations)]);
        return new ClassPanel(of, calendar, locations, panel);
    }

    /// <summary>Every part of a path but the last names a sub-assembly: <c>exhaust</c>, and <c>exhaust/cyl-3</c> in it.</summary>
    private static List<(string Name, IReadOnlyList<int> Locations)> SubAssemblies(IReadOnlyList<string> locations) => [.. locations.Index()
        .SelectMany(l => Enumerable.Range(0, l.Item.Length).Where(i => l.Item[i] == '/').Select(i => (Prefix: l.Item[..i], l.Index)))
        .GroupBy(p => p.Prefix, p => p.Index, StringComparer.Ordinal)
        .OrderBy(g => g.Key, StringComparer.Ordinal)
        .Select(g => (g.Key, (IReadOnlyList<int>)[.. g]))];
}

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
    public static ClassPanel Build(ConditionClass of, HoursCalendar calendar, IReadOnlyList<WatchedLook> looks, Func<WatchedLook, string> unitOf)
    {
        List<string> locations = [.. looks.Select(l => l.Location).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        var index = locations.Index().ToDictionary(l => l.Item, l => l.Index, StringComparer.Ordinal);
        var units = looks.GroupBy(unitOf, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => Unit(g.Key, [.. g]));
        var panel = new WatchedPanel(
            calendar.Periods, HoursCalendar.PeriodDays / 365.25, ChangeScope.Spread(Whole, locations, SubAssemblies(locations)), [.. units]);
        return new ClassPanel(of, calendar, locations, panel);

        WatchedUnit Unit(string name, List<WatchedLook> own)
        {
            var (first, last) = (own.Min(l => calendar.PeriodOf(l.Date)), own.Max(l => calendar.PeriodOf(l.Date)));
            var exposure = Enumerable.Range(first, last - first + 1).Select(_ => new double[locations.Count]).ToList();
            var findings = new List<UnitFinding>();
            foreach (var look in own)
            {
                var (period, location) = (calendar.PeriodOf(look.Date), index[look.Location]);
                exposure[period - first][location] += look.Exposure;
                for (var n = 0; n < look.Found; n++)
                    findings.Add(new UnitFinding(period, location));
            }

            return new WatchedUnit(name, first, exposure, findings);
        }
    }

    /// <summary>Every part of a path but the last names a sub-assembly: <c>exhaust</c>, and <c>exhaust/cyl-3</c> in it.</summary>
    private static List<(string Name, IReadOnlyList<int> Locations)> SubAssemblies(List<string> locations) => [.. locations.Index()
        .SelectMany(l => Enumerable.Range(0, l.Item.Length).Where(i => l.Item[i] == '/').Select(i => (Prefix: l.Item[..i], l.Index)))
        .GroupBy(p => p.Prefix, p => p.Index, StringComparer.Ordinal)
        .OrderBy(g => g.Key, StringComparer.Ordinal)
        .Select(g => (g.Key, (IReadOnlyList<int>)[.. g]))];
}

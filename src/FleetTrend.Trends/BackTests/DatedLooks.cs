using System.Runtime.InteropServices;
using FleetTrend.Statistics.Changes;
using FleetTrend.Trends.Expectations;

namespace FleetTrend.Trends.BackTests;

/// <summary>Looks of a class by unit and location in numbers, so that they can be cut into periods again and again.</summary>
internal sealed class DatedLooks
{
    private readonly WatchedPanel like;
    private readonly Dated[][] units;

    /// <summary>Makes it.</summary>
    /// <param name="panel">The panel of today, with its locations and parts.</param>
    /// <param name="looks">The looks.</param>
    /// <param name="unitOf">The unit of a look.</param>
    public DatedLooks(ClassPanel panel, IEnumerable<WatchedLook> looks, Func<WatchedLook, string> unitOf)
    {
        like = panel.Panel;
        var locations = panel.Locations.Index().ToDictionary(l => l.Item, l => l.Index, StringComparer.Ordinal);
        var byUnit = panel.Panel.Units.Index().ToDictionary(u => u.Item.Name, u => (u.Index, Looks: new List<Dated>()), StringComparer.Ordinal);
        foreach (var look in looks)
            byUnit[unitOf(look)].Looks.Add(new Dated(look.Date, locations[look.Location], look.Exposure, look.Found));
        units = [.. byUnit.Values.OrderBy(u => u.Index).Select(u => u.Looks.ToArray())];
    }

    /// <summary>The panel as of a day: looks up to it, in periods that end on it. Null where there are none.</summary>
    public WatchedPanel? Until(DateOnly day, HoursCalendar calendar)
    {
        var watched = new List<WatchedUnit>(units.Length);
        foreach (var (u, looks) in units.Index())
        {
            var (first, last) = (int.MaxValue, -1);
            foreach (var look in looks)
            {
                if (look.Date > day)
                    continue;
                var period = calendar.PeriodOf(look.Date);
                (first, last) = (Math.Min(first, period), Math.Max(last, period));
            }

            if (last < 0)
                continue;
            var exposure = Enumerable.Range(0, last - first + 1).Select(_ => new double[like.Locations]).ToList();
            var findings = new List<UnitFinding>();
            foreach (var look in looks)
            {
                if (look.Date > day)
                    continue;
                var period = calendar.PeriodOf(look.Date);
                exposure[period - first][look.Location] += look.Exposure;
                for (var n = 0; n < look.Found; n++)
                    findings.Add(new UnitFinding(period, look.Location));
            }

            watched.Add(new WatchedUnit(like.Units[u].Name, first, exposure, findings));
        }

        return watched.Count == 0 ? null : new WatchedPanel(calendar.Periods, like.PeriodYears, like.Scopes, watched);
    }

    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Dated(DateOnly Date, int Location, double Exposure, int Found);
}

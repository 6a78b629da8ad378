using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Statistics.Tests.Recurrences;

/// <summary>Reads the reference rows unit, what (window or event), start, stop.</summary>
internal static class RecurrenceRows
{
    public static Dictionary<int, RecurrenceUnit> Read(ReferenceCase reference, Func<int, bool>? eventRow = null)
    {
        var (unit, what) = (reference.Counts("unit"), reference.Text("what"));
        var (start, stop) = (reference.Column("start"), reference.Column("stop"));
        return Enumerable.Range(0, unit.Length)
            .GroupBy(i => unit[i])
            .ToDictionary(g => g.Key, g => new RecurrenceUnit(
                g.Where(i => what[i] == "window").Select(i => new ObservationWindow(start[i], stop[i])),
                g.Where(i => what[i] == "event" && (eventRow is null || eventRow(i))).Select(i => start[i])));
    }
}

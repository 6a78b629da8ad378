using FleetTrend.Cli.Csv;
using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Cli.Analysis;

/// <summary>
/// Recurrences: unit,time,what with what = start, event or end. A unit is watched from each start (its first is 0 where
/// none is given) to the next end, and has its events in between: start &lt; time &lt;= end.
/// </summary>
internal static class RecurrenceFile
{
    /// <summary>Reads the units in the order in which they first appear.</summary>
    public static (CsvTable Table, IReadOnlyList<RecurrenceUnit> Units) Read(string path)
    {
        var table = CsvTable.Read(path, ["unit", "time", "what"], []);
        var marks = new Dictionary<string, List<Mark>>(StringComparer.Ordinal);
        var order = new List<List<Mark>>();
        foreach (var row in table.Rows)
        {
            var unit = row.Key("unit");
            var time = row.Number("time");
            var what = What(row);
            if (unit is null || time is null || what is null)
                continue;
            if (!marks.TryGetValue(unit, out var own))
            {
                marks.Add(unit, own = []);
                order.Add(own);
            }
            own.Add(new Mark(row, time.Value, what.Value));
        }
        if (table.Problems.Count > 0)
            return (table, []);
        return (table, [.. order.Select(Unit).OfType<RecurrenceUnit>()]);
    }

    private static Kind? What(CsvRow row)
    {
        switch (row.Text("what"))
        {
            case "start":
                return Kind.Start;
            case "event":
                return Kind.Event;
            case "end":
                return Kind.End;
            default:
                row.Refuse<string>("what", "must be start, event or end");
                return null;
        }
    }

    /// <summary>Null after a refusal. At one age an event comes before the end that closes it and the end before a new start.</summary>
    private static RecurrenceUnit? Unit(List<Mark> marks)
    {
        var sorted = marks.OrderBy(m => m.Time).ThenBy(m => m.What).ToList();
        // A unit that begins and ends at one age was watched for no time; its start must still come first.
        double? open = sorted.Any(m => m.What == Kind.Start) && FirstStartIsGiven(sorted) ? null : 0;
        var windows = new List<ObservationWindow>();
        var events = new List<double>();
        foreach (var mark in sorted)
        {
            switch (mark.What)
            {
                case Kind.Event when open is { } start && mark.Time > start:
                    events.Add(mark.Time);
                    break;
                case Kind.Event:
                    return mark.Row.Refuse<RecurrenceUnit>("time", "must be after a start and not after its end");
                case Kind.End when open is { } start:
                    windows.Add(new ObservationWindow(start, mark.Time));
                    open = null;
                    break;
                case Kind.End:
                    return mark.Row.Refuse<RecurrenceUnit>("what", "must be an end with a start before it");
                case Kind.Start when open is null:
                    open = mark.Time;
                    break;
                default:
                    return mark.Row.Refuse<RecurrenceUnit>("what", "must be a start not before the end of the span before it");
            }
        }
        return open is null
            ? new RecurrenceUnit(windows, events)
            : sorted[^1].Row.Refuse<RecurrenceUnit>("unit", "must be a unit with an end after its last start, which says until when it was watched");
    }

    /// <summary>Whether the first start or end is a start: then the default start of 0 is not meant.</summary>
    private static bool FirstStartIsGiven(List<Mark> sorted) => sorted.First(m => m.What != Kind.Event).What == Kind.Start;

    private enum Kind
    {
        Event,
        End,
        Start,
    }

    private sealed record Mark(CsvRow Row, double Time, Kind What);
}

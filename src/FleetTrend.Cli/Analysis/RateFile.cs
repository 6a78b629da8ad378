using FleetTrend.Cli.Csv;
using FleetTrend.Statistics.Norms;

namespace FleetTrend.Cli.Analysis;

/// <summary>Rates: unit,events,exposure; a unit appears once.</summary>
internal static class RateFile
{
    /// <summary>Reads the counts in the order of the file.</summary>
    public static (CsvTable Table, IReadOnlyList<UnitCount> Units) Read(string path)
    {
        var table = CsvTable.Read(path, ["unit", "events", "exposure"], []);
        var total = 0L;
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var units = new List<UnitCount>(table.Rows.Count);
        foreach (var row in table.Rows)
        {
            var unit = row.Key("unit");
            var events = row.Count("events", 0);
            var exposure = row.Number("exposure");
            if (unit is null || events is null || exposure is null)
                continue;
            if (!seen.Add(unit))
                row.Refuse<string>("unit", "must be a unit that appears once: add its events and exposure together");
            else if (events > 0 && exposure == 0)
                row.Refuse<string>("exposure", $"must be above zero where there are events, {events}");
            else if ((total += events.Value) > int.MaxValue)
                row.Refuse<string>("events", $"must be, with those of the rows before, up to {int.MaxValue} events, and not {total}");
            else
                units.Add(new UnitCount(unit, events.Value, exposure.Value));
        }
        return (table, units);
    }
}

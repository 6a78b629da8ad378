using FleetTrend.Cli.Csv;
using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Cli.Analysis;

/// <summary>Growth: unit,start,stop,exposure,events; a line per span of a unit in which events are known to lie, such as that between two looks.</summary>
internal static class GrowthFile
{
    /// <summary>Reads the units in the order in which they first appear.</summary>
    public static (CsvTable Table, IReadOnlyList<IReadOnlyList<GrowthSpan>> Units) Read(string path)
    {
        var table = CsvTable.Read(path, ["unit", "start", "stop", "exposure", "events"], []);
        var units = new Dictionary<string, List<GrowthSpan>>(StringComparer.Ordinal);
        foreach (var row in table.Rows)
        {
            var (unit, events, exposure) = (row.Key("unit"), row.Count("events", 0), row.Number("exposure"));
            var (start, stop) = (row.SignedNumber("start"), row.SignedNumber("stop"));
            if (unit is null || events is null || exposure is null || start is null || stop is null)
                continue;
            if (!units.TryGetValue(unit, out var spans))
                units.Add(unit, spans = []);
            if (stop <= start)
                row.Refuse<string>("stop", "must be after the start");
            else if (exposure == 0)
                row.Refuse<string>("exposure", "must be above zero");
            else
                spans.Add(new GrowthSpan(start.Value, stop.Value, exposure.Value, events.Value));
        }

        return (table, [.. units.Values]);
    }
}

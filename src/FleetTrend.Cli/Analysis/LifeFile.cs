using FleetTrend.Cli.Csv;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Cli.Analysis;

/// <summary>
/// Lives: lower,upper,entry,count. Failure in (lower, upper]; empty upper: not failed at lower; equal: exact; entry (default
/// 0): age at which it came under observation; count (default 1): lives alike.
/// </summary>
internal static class LifeFile
{
    /// <summary>Reads the lives; the table's problems say what was refused.</summary>
    public static (CsvTable Table, IReadOnlyList<Life> Lives) Read(string path)
    {
        var table = CsvTable.Read(path, ["lower"], ["upper", "entry", "count"]);
        var lives = new List<Life>(table.Rows.Count);
        foreach (var row in table.Rows)
        {
            if (Parse(row) is { } life)
                lives.Add(life);
        }
        return (table, lives);
    }

    private static Life? Parse(CsvRow row)
    {
        var lower = row.Number("lower");
        var upper = row.Number("upper", double.PositiveInfinity);
        var entry = row.Number("entry", 0);
        var count = row.Count("count", 1, 1);
        if (lower is null || upper is null || entry is null || count is null)
            return null;
        if (upper < lower)
            row.Refuse<string>("upper", $"must not be below lower, {lower}");
        else if (entry > lower)
            row.Refuse<string>("entry", $"must not be above lower, {lower}");
        else if (lower == upper && lower <= entry)
            row.Refuse<string>("upper", $"must be above entry, {entry}, where it is an exact age of failure");
        else
            return new Life(lower.Value, upper.Value, entry.Value, count.Value);
        return null;
    }
}

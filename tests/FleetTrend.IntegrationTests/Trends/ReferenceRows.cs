using System.Globalization;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>Rows of tests/reference/ID/data.csv; the SOURCE.md beside it says where they are from.</summary>
internal static class ReferenceRows
{
    /// <summary>Lives: failed in (lower, upper], or seen good at lower where upper is null; count of them.</summary>
    public static IEnumerable<(double Lower, double? Upper, int Count)> Lives(string id) =>
        Read(id).Select(cells => (Number(cells[0])!.Value, Number(cells[1]), (int)Number(cells[3])!.Value));

    /// <summary>Events and windows: unit, what, start, stop.</summary>
    public static IEnumerable<(string Unit, bool IsEvent, double Start, double? Stop)> Recurrences(string id) =>
        Read(id).Select(cells => (cells[0], cells[1] == "event", Number(cells[2])!.Value, Number(cells[3])));

    private static IEnumerable<string[]> Read(string id) =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "reference", id, "data.csv")).Skip(1).Select(line => line.Split(','));

    private static double? Number(string cell) => cell.Length == 0 ? null : double.Parse(cell, CultureInfo.InvariantCulture);
}

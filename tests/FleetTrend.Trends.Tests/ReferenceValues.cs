using System.Globalization;
using System.Text.Json;

namespace FleetTrend.Trends.Tests;

/// <summary>Rows and expected values of one folder of tests/reference, made by a committed R script from the source its SOURCE.md names.</summary>
internal sealed class ReferenceValues
{
    private readonly JsonElement root;
    private readonly string[] header;
    private readonly string[][] rows;

    private ReferenceValues(string folder)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "expected.json")));
        root = document.RootElement.Clone();
        var lines = File.ReadAllLines(Path.Combine(folder, "data.csv"));
        header = lines[0].Split(',');
        rows = [.. lines.Skip(1).Select(l => l.Split(','))];
    }

    public static ReferenceValues Load(string id) => new(Path.Combine(AppContext.BaseDirectory, "reference", id));

    public IEnumerable<Row> Rows => rows.Select(r => new Row(header, r));

    public double Expected(params string[] path) => Find("expected", path).GetDouble();

    public double[] ExpectedAll(params string[] path) => [.. Find("expected", path).EnumerateArray().Select(e => e.GetDouble())];

    public double Published(params string[] path) => Find("published", path).GetDouble();

    private JsonElement Find(string part, string[] path) => path.Aggregate(root.GetProperty(part), (e, name) => e.GetProperty(name));

    internal sealed class Row(string[] header, string[] cells)
    {
        public string Text(string column) => cells[Array.IndexOf(header, column)];

        public double? Number(string column) =>
            Text(column) is { Length: > 0 } text ? double.Parse(text, CultureInfo.InvariantCulture) : null;
    }
}

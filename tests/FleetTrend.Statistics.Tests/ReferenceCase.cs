using System.Globalization;
using System.Text.Json;

namespace FleetTrend.Statistics.Tests;

/// <summary>
/// One folder of tests/reference: rows and expected values made by a committed R script from a named source (its
/// SOURCE.md). A value passes when |x - expected| &lt;= abs + rel * |expected|.
/// </summary>
internal sealed class ReferenceCase
{
    private readonly JsonElement root;
    private readonly string[] header;
    private readonly string[][] rows;

    private ReferenceCase(string folder)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "expected.json")));
        root = document.RootElement.Clone();
        var csv = Path.Combine(folder, "data.csv");
        var lines = File.Exists(csv) ? File.ReadAllLines(csv) : [""];
        header = lines[0].Split(',');
        rows = [.. lines.Skip(1).Select(l => l.Split(','))];
    }

    public static ReferenceCase Load(string id) => new(Path.Combine(AppContext.BaseDirectory, "reference", id));

    public double Parameter(params string[] path) => Number(Find("parameters", path));

    public double[] Parameters(params string[] path) => Numbers(Find("parameters", path));

    public bool Has(params string[] path)
    {
        var element = root.GetProperty("expected");
        return path.All(name => element.TryGetProperty(name, out element));
    }

    public double Expected(params string[] path) => Number(Find("expected", path));

    public double[] ExpectedAll(params string[] path) => Numbers(Find("expected", path));

    public double[] ExpectedRow(int row, params string[] path) => Numbers(Find("expected", path)[row]);

    public double Published(params string[] path) => Number(Find("published", path));

    public double[] PublishedAll(params string[] path) => Numbers(Find("published", path));

    public string[] Text(string column) => [.. rows.Select(r => r[Array.IndexOf(header, column)])];

    public double[] Column(string column) =>
        [.. Text(column).Select(t => double.Parse(t, CultureInfo.InvariantCulture))];

    public int[] Counts(string column) => [.. Column(column).Select(c => (int)c)];

    /// <summary>Asserts one value against the case's own tolerance.</summary>
    public void Equal(double actual, params string[] path) => Close(Expected(path), actual, string.Join('.', path));

    /// <summary>Asserts a list of values against the case's own tolerance.</summary>
    public void Equal(IEnumerable<double> actual, params string[] path)
    {
        var expected = ExpectedAll(path);
        double[] values = [.. actual];
        Assert.Equal(expected.Length, values.Length);
        for (var i = 0; i < values.Length; i++)
            Close(expected[i], values[i], $"{string.Join('.', path)}[{i}]");
    }

    private void Close(double expected, double actual, string what)
    {
        var tolerance = root.GetProperty("tolerance");
        var allowed = Number(tolerance.GetProperty("abs")) + Number(tolerance.GetProperty("rel")) * Math.Abs(expected);
        Assert.True(
            expected.Equals(actual) || Math.Abs(actual - expected) <= allowed,
            $"{what}: expected {expected:R}, got {actual:R}, off by {actual - expected:R}, allowed {allowed:R}");
    }

    private JsonElement Find(string part, string[] path) =>
        path.Aggregate(root.GetProperty(part), (element, name) => element.GetProperty(name));

    private static double[] Numbers(JsonElement element) =>
        element.ValueKind == JsonValueKind.Array ? [.. element.EnumerateArray().Select(Number)] : [Number(element)];

    private static double Number(JsonElement element) =>
        element.ValueKind != JsonValueKind.String ? element.GetDouble()
        : element.GetString() == "Inf" ? double.PositiveInfinity
        : element.GetString() == "-Inf" ? double.NegativeInfinity
        : throw new FormatException($"Not a number: {element}");
}

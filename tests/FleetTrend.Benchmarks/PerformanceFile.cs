using System.Globalization;

namespace FleetTrend.Benchmarks;

/// <summary>A comma-separated file of numbers, read whole; an empty field is positive infinity.</summary>
internal sealed class PerformanceFile
{
    private readonly Dictionary<string, double[]> columns = new(StringComparer.Ordinal);

    public PerformanceFile(string path)
    {
        using var reader = new StreamReader(path);
        var names = reader.ReadLine()!.Split(',');
        var values = names.Select(_ => new List<double>()).ToArray();
        while (reader.ReadLine() is { } line)
        {
            var rest = line.AsSpan();
            for (var i = 0; i < names.Length; i++)
            {
                var comma = rest.IndexOf(',');
                var field = comma < 0 ? rest : rest[..comma];
                values[i].Add(field.IsEmpty ? double.PositiveInfinity : double.Parse(field, CultureInfo.InvariantCulture));
                rest = comma < 0 ? [] : rest[(comma + 1)..];
            }
        }

        for (var i = 0; i < names.Length; i++) columns[names[i]] = [.. values[i]];
    }

    public double[] this[string column] => columns[column];

    public bool Has(string column) => columns.ContainsKey(column);
}

namespace FleetTrend.Cli.Csv;

/// <summary>One line below the header.</summary>
/// <param name="Number">Line in the file, the header being line 1.</param>
/// <param name="Columns">Place of each column, by name.</param>
/// <param name="Fields">The fields as they stand; may be fewer than columns.</param>
public sealed record CsvLine(int Number, IReadOnlyDictionary<string, int> Columns, IReadOnlyList<string> Fields)
{
    /// <summary>The trimmed text of a column; empty where the file has no such column.</summary>
    public string Text(string column) => Raw(column).Trim();

    /// <summary>The text of a column as it stands; empty where the file has no such column.</summary>
    public string Raw(string column) => Columns.TryGetValue(column, out var i) && i < Fields.Count ? Fields[i] : "";
}

namespace FleetTrend.Cli.Csv;

/// <summary>A comma-separated file read whole, for input that is refused whole.</summary>
public sealed class CsvTable
{
    private CsvTable(string file)
    {
        File = file;
    }

    /// <summary>Path as given.</summary>
    public string File { get; }

    /// <summary>Rows in the order of the file.</summary>
    public List<CsvRow> Rows { get; } = [];

    /// <summary>What is wrong with the file; readers of rows add to it.</summary>
    public List<CsvProblem> Problems { get; } = [];

    /// <summary>Reads a file.</summary>
    /// <param name="file">Its path.</param>
    /// <param name="required">Columns it must have.</param>
    /// <param name="optional">Columns it may have.</param>
    /// <returns>The table; without rows where the header is wrong.</returns>
    public static CsvTable Read(string file, IReadOnlyList<string> required, IReadOnlyList<string> optional)
    {
        var table = new CsvTable(file);
        table.Rows.AddRange(CsvFile.Read(file, required, optional, table.Problems).Select(line => new CsvRow(table, line)));
        if (table.Rows.Count == 0 && table.Problems.Count == 0)
            table.Problems.Add(new CsvProblem(file, 2, required[0], "", "must be a file with rows below its header"));
        return table;
    }
}

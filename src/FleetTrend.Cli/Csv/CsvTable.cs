using CsvHelper;

namespace FleetTrend.Cli.Csv;

/// <summary>
/// A comma-separated file with a header line. Columns come in any order; one that is not known is refused, because a
/// misspelt optional column would otherwise be left out in silence.
/// </summary>
public sealed class CsvTable
{
    private readonly Dictionary<string, int> columns = new(StringComparer.Ordinal);

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
        try
        {
            using var csv = CsvReader.FromFile(file, new CsvReaderOptions
            {
                Separator = ',',
                TrackLineNumbers = true,
                MalformedData = CsvMalformedDataHandling.Throw,
            });
            string[] header = [.. csv.Headers];
            if (header.Length == 0)
                table.Problems.Add(new CsvProblem(file, 1, required[0], "", $"the file is empty; its first line names columns {string.Join(',', required)}"));
            else if (table.HasGoodHeader(header, required, optional))
                table.ReadRows(csv);
        }
        catch (CsvFormatException malformed)
        {
            table.Problems.Add(new CsvProblem(file, (int)malformed.LineNumber, "(line)", "", malformed.Message));
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            table.Problems.Add(new CsvProblem(file, 0, "(file)", file, $"must be a file that can be read: {unreadable.Message}"));
        }
        return table;
    }

    internal int? Index(string column) => columns.TryGetValue(column, out var index) ? index : null;

    private bool HasGoodHeader(string[] header, IReadOnlyList<string> required, IReadOnlyList<string> optional)
    {
        for (var i = 0; i < header.Length; i++)
        {
            var name = header[i].Trim().TrimStart('\uFEFF');
            if (!required.Contains(name, StringComparer.Ordinal) && !optional.Contains(name, StringComparer.Ordinal))
                Problems.Add(new CsvProblem(File, 1, name, name, $"is no column of this file; known are {string.Join(',', required.Concat(optional))}"));
            else if (!columns.TryAdd(name, i))
                Problems.Add(new CsvProblem(File, 1, name, name, "the column appears twice"));
        }
        foreach (var name in required.Where(r => !columns.ContainsKey(r)))
            Problems.Add(new CsvProblem(File, 1, name, "", "the column is required"));
        return Problems.Count == 0;
    }

    private void ReadRows(CsvReader csv)
    {
        while (csv.Read())
        {
            var fields = csv.Current.ToArray();
            var row = new CsvRow(this, (int)csv.LineNumber, fields);
            if (fields.Length > columns.Count)
                Problems.Add(new CsvProblem(File, row.Line, "(last)", fields[^1], $"the line has {fields.Length} fields, the header {columns.Count}"));
            else
                Rows.Add(row);
        }
        if (Rows.Count == 0 && Problems.Count == 0)
            Problems.Add(new CsvProblem(File, 2, columns.Keys.First(), "", "the file has no rows below its header"));
    }
}

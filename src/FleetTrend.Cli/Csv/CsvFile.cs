using CsvHelper;

namespace FleetTrend.Cli.Csv;

/// <summary>
/// A comma-separated file with a header line, read line by line. Columns come in any order; one that is not known is refused,
/// because a misspelt optional column would otherwise be left out in silence. A line without any text is passed over: spreadsheets
/// leave them behind.
/// </summary>
public static class CsvFile
{
    /// <summary>Reads a file; nothing comes where the header is wrong, and nothing after a line that is no CSV.</summary>
    /// <param name="file">Its path.</param>
    /// <param name="required">Columns it must have.</param>
    /// <param name="optional">Columns it may have.</param>
    /// <param name="problems">Told what is wrong with the file.</param>
    public static IEnumerable<CsvLine> Read(
        string file, IReadOnlyList<string> required, IReadOnlyList<string> optional, ICollection<CsvProblem> problems)
    {
        using var csv = Try(file, problems, () => CsvReader.FromFile(file, new CsvReaderOptions
        {
            Separator = ',',
            TrackLineNumbers = true,
            MalformedData = CsvMalformedDataHandling.Throw,
        }));
        if (csv is null || Try(file, problems, () => Columns(file, [.. csv.Headers], required, optional, problems)) is not { } columns)
            yield break;
        while (Try(file, problems, () => csv.Read() ? new CsvLine((int)csv.LineNumber, columns, csv.Current.ToArray()) : null) is { } line)
        {
            if (line.Fields.All(string.IsNullOrWhiteSpace))
                continue;
            if (line.Fields.FirstOrDefault(field => field.Contains('\uFFFD', StringComparison.Ordinal)) is { } unreadable)
                problems.Add(new CsvProblem(file, line.Number, "(line)", unreadable, "is no UTF-8: save the file as CSV in UTF-8"));
            else if (line.Fields.Count > columns.Count)
                problems.Add(new CsvProblem(file, line.Number, "(last)", line.Fields[^1], $"the line has {line.Fields.Count} fields, the header {columns.Count}"));
            else
                yield return line;
        }
    }

    private static T? Try<T>(string file, ICollection<CsvProblem> problems, Func<T?> read)
        where T : class
    {
        try
        {
            return read();
        }
        catch (CsvFormatException malformed)
        {
            problems.Add(new CsvProblem(file, (int)malformed.LineNumber, "(line)", "", malformed.Message));
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            problems.Add(new CsvProblem(file, 0, "(file)", file, $"must be a file that can be read: {unreadable.Message}"));
        }

        return null;
    }

    private static Dictionary<string, int>? Columns(
        string file, string[] header, IReadOnlyList<string> required, IReadOnlyList<string> optional, ICollection<CsvProblem> problems)
    {
        if (header.Length == 0)
        {
            problems.Add(new CsvProblem(file, 1, required[0], "", $"the file is empty; its first line names columns {string.Join(',', required)}"));
            return null;
        }

        if (header is [var only] && only.AsSpan().ContainsAny(';', '\t'))
        {
            problems.Add(new CsvProblem(file, 1, "(line)", only, "the columns are not parted by commas: save the file as CSV with commas"));
            return null;
        }

        var columns = new Dictionary<string, int>(StringComparer.Ordinal);
        var before = problems.Count;
        for (var i = 0; i < header.Length; i++)
        {
            var name = header[i].Trim().TrimStart('\uFEFF');
            if (name.Length == 0)
                problems.Add(new CsvProblem(file, 1, $"(number {i + 1})", "", "has no name: name the column, or take it away"));
            else if (!required.Contains(name, StringComparer.Ordinal) && !optional.Contains(name, StringComparer.Ordinal))
                problems.Add(new CsvProblem(file, 1, name, name, $"is no column of this file; known are {string.Join(',', required.Concat(optional))}"));
            else if (!columns.TryAdd(name, i))
                problems.Add(new CsvProblem(file, 1, name, name, "the column appears twice"));
        }

        foreach (var name in required.Where(r => !columns.ContainsKey(r)))
            problems.Add(new CsvProblem(file, 1, name, "", "the column is required"));
        return problems.Count == before ? columns : null;
    }
}

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
                problems.Add(new CsvProblem(file, line.Number, "(line)", unreadable, "must be UTF-8: save the file as CSV in UTF-8"));
            else if (line.Fields.Count > columns.Count)
                problems.Add(new CsvProblem(file, line.Number, "(last)", line.Fields[^1], $"must be the last of {columns.Count} fields, as the header has them, not of {line.Fields.Count}"));
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
            problems.Add(new CsvProblem(file, (int)malformed.LineNumber, "(line)", "", $"must be CSV: {malformed.Message.TrimEnd('.')}"));
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            problems.Add(new CsvProblem(file, 0, "(file)", file, $"must be a file that can be read: {unreadable.Message.TrimEnd('.')}"));
        }

        return null;
    }

    private static Dictionary<string, int>? Columns(
        string file, string[] header, IReadOnlyList<string> required, IReadOnlyList<string> optional, ICollection<CsvProblem> problems)
    {
        if (header.Length == 0)
        {
            problems.Add(new CsvProblem(file, 1, required[0], "", $"must be a column of the first line, which names {string.Join(", ", required)}; the file is empty"));
            return null;
        }

        if (header is [var only] && only.AsSpan().ContainsAny(';', '\t'))
        {
            problems.Add(new CsvProblem(file, 1, "(line)", only, "must be columns with commas between them: save the file as CSV with commas"));
            return null;
        }

        var columns = new Dictionary<string, int>(StringComparer.Ordinal);
        var before = problems.Count;
        for (var i = 0; i < header.Length; i++)
        {
            var name = header[i].Trim().TrimStart('\uFEFF');
            if (name.Length == 0)
                problems.Add(new CsvProblem(file, 1, $"(number {i + 1})", "", "must be a name: name the column, or take it away"));
            else if (!required.Contains(name, StringComparer.Ordinal) && !optional.Contains(name, StringComparer.Ordinal))
                problems.Add(new CsvProblem(file, 1, name, name, $"must be one of the columns {string.Join(", ", required.Concat(optional))}"));
            else if (!columns.TryAdd(name, i))
                problems.Add(new CsvProblem(file, 1, name, name, "must be a column that appears once"));
        }

        foreach (var name in required.Where(r => !columns.ContainsKey(r)))
            problems.Add(new CsvProblem(file, 1, name, "", "must be a column of this file"));
        return problems.Count == before ? columns : null;
    }
}

using System.Globalization;
using CsvHelper;
using FleetTrend.Cli.RecordFiles;
using Google.Protobuf.Reflection;

namespace FleetTrend.Cli.Import;

/// <summary>
/// A folder of the same files with the rows that were not taken, and why. A thing is there with all its lines, so that the
/// folder can be corrected and imported as it is. Until the run has come to its end they stand in a folder beside it, so that one that
/// was killed leaves nothing that looks like the result of an import.
/// </summary>
internal sealed class Rejects(string folder) : IDisposable
{
    private const string Between = " | ";

    private readonly string partial = Path.TrimEndingDirectorySeparator(folder) + ".partial";

    private readonly Dictionary<FileForm, CsvWriter> writers = [];

    /// <summary>The folder; it is made with the first row.</summary>
    public string Folder => folder;

    /// <summary>Whether any row was written.</summary>
    public bool Any => writers.Count > 0;

    /// <summary>Whether the folder has files of an earlier import, which must not be lost.</summary>
    public static bool IsTaken(string folder) => Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any();

    /// <summary>Writes a thing and its lines; the faults go to the row that each speaks of.</summary>
    public void Add(FileRecord record, IReadOnlyList<Fault> faults)
    {
        var own = faults.Where(f => f.Row == record.Row).ToList();
        var firstOfLines = faults.FirstOrDefault(f => f.Row != record.Row);
        if (own.Count == 0 && firstOfLines is not null)
            own.Add(firstOfLines with { Column = "", Why = $"{firstOfLines.Row.Form}, line {firstOfLines.Row.Line.Number}, {firstOfLines.Column}: {firstOfLines.Why}" });
        Write(record.Row, own);
        foreach (var line in record.Lines)
            Write(line, [.. faults.Where(f => f.Row == line)]);
    }

    /// <summary>Writes a line that belongs to nothing.</summary>
    public void Add(Fault fault) => Write(fault.Row, [fault]);

    /// <summary>The run came to its end: the folder is there from now on.</summary>
    public void Complete()
    {
        Dispose();
        if (!Any)
            return;
        Directory.CreateDirectory(folder);
        foreach (var form in writers.Keys)
            File.Move(Path.Combine(partial, form.Name), Path.Combine(folder, form.Name));
        Directory.Delete(partial);
    }

    /// <summary>The run did not come to its end, and another will find the same.</summary>
    public void Discard()
    {
        Dispose();
        foreach (var form in writers.Keys)
            File.Delete(Path.Combine(partial, form.Name));
        if (Any)
            Directory.Delete(partial);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var writer in writers.Values)
            writer.Dispose();
    }

    private void Write(FileRow row, IReadOnlyList<Fault> faults)
    {
        var columns = row.Line.Columns.Where(c => !FileForm.RejectColumns.Contains(c.Key, StringComparer.Ordinal)).OrderBy(c => c.Value).ToList();
        if (!writers.TryGetValue(row.Form, out var writer))
        {
            Directory.CreateDirectory(partial);
            writers.Add(row.Form, writer = CsvWriter.ToFile(Path.Combine(partial, row.Form.Name), CsvWriterOptions.Default, default));
            writer.WriteRecord([.. columns.Select(c => c.Key), .. FileForm.RejectColumns]);
        }

        string Joined(Func<Fault, string> part) => string.Join(Between, faults.Select(part));
        writer.WriteRecord([
            .. columns.Select(c => Harmless(row, c.Key)),
            row.Line.Number.ToString(CultureInfo.InvariantCulture), Joined(f => f.Reason), Joined(f => f.Column), Joined(f => f.Why)]);
    }

    /// <summary>A cell as it stood, and no formula to a spreadsheet: a number stays one.</summary>
    private static string Harmless(FileRow row, string column)
    {
        var cell = row.Line.Raw(column);
        var field = row.Form.Columns.FirstOrDefault(c => c.Name == column)?.Field;
        if (field is { FieldType: FieldType.Double or FieldType.Int32 } && Cell.Read(field, cell.Trim()) is not null)
            return cell;
        return FormulaGuard.On(FormulaGuard.Off(cell));
    }
}

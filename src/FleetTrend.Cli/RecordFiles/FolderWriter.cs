using System.Collections;
using CsvHelper;
using FleetTrend.Contracts.V1;
using Google.Protobuf;

namespace FleetTrend.Cli.RecordFiles;

/// <summary>
/// Writes records into the files of the set, as an import reads them. No cell is a formula to a spreadsheet.
/// </summary>
internal sealed class FolderWriter(string folder) : IDisposable
{
    private readonly Dictionary<FileForm, CsvWriter> writers = [];
    private readonly Dictionary<FileForm, int> counts = [];

    /// <summary>Rows written per file.</summary>
    public IReadOnlyDictionary<FileForm, int> Counts => counts;

    /// <summary>Writes a record and its lines.</summary>
    public void Write(Record record)
    {
        var form = FileSet.Records.Single(f => f.Field!.Accessor.HasValue(record));
        Write(form, [.. form.Keys.Select(k => Cell.Write(k.Field!, record.Key))], (IMessage)form.Field!.Accessor.GetValue(record));
    }

    /// <summary>Writes a source, a layout with its locations, or a type group.</summary>
    public void Write(FileForm form, IMessage thing) => Write(form, [.. form.Keys.Select(k => Cell.Write(k.Field!, thing))], thing);

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var writer in writers.Values)
            writer.Dispose();
    }

    private void Write(FileForm form, IReadOnlyList<string> keys, IMessage thing)
    {
        WriteRow(form, keys, thing);
        if (FileSet.Lines.FirstOrDefault(l => l.LinesOf == form) is not { } lines)
            return;
        foreach (IMessage line in (IList)lines.Field!.Accessor.GetValue(thing))
            WriteRow(lines, keys, line);
    }

    private void WriteRow(FileForm form, IReadOnlyList<string> keys, IMessage message)
    {
        var fields = form.Columns.Skip(keys.Count).Where(c => c.Field is not null).ToList();
        if (!writers.TryGetValue(form, out var writer))
        {
            writers.Add(form, writer = CsvWriter.ToFile(Path.Combine(folder, form.Name), CsvWriterOptions.Default, default));
            writer.WriteRecord([.. form.Keys.Select(k => k.Name), .. fields.Select(f => f.Name)]);
            counts.Add(form, 0);
        }

        counts[form]++;
        writer.WriteRecord([.. keys, .. fields.Select(f => Cell.Write(f.Field!, message))]);
    }
}

using System.Collections;
using FleetTrend.Cli.Csv;
using FleetTrend.Contracts.V1;
using Google.Protobuf;

namespace FleetTrend.Cli.RecordFiles;

/// <summary>
/// The files of one folder. They are checked whole when it is opened, and read row by row after; only files of lines are kept
/// in memory, by the thing that they belong to.
/// </summary>
internal sealed class RecordFolder
{
    private readonly string folder;
    private readonly Dictionary<FileForm, Dictionary<string, List<FileRow>>> lines = [];
    private readonly Dictionary<FileForm, int> counts = [];
    private readonly List<CsvProblem> problems = [];

    private RecordFolder(string folder) => this.folder = folder;

    /// <summary>Source of rows that name none. Set it before reading rows.</summary>
    public string Source { get; set; } = "";

    /// <summary>Whether a file has no column that names the source.</summary>
    public bool NeedsSource { get; private set; }

    /// <summary>What is wrong with the files as such; with any, nothing should be sent.</summary>
    public IReadOnlyList<CsvProblem> Problems => problems;

    /// <summary>Rows per file; a file that is not there has none.</summary>
    public IReadOnlyDictionary<FileForm, int> Counts => counts;

    /// <summary>Opens a folder and checks its files.</summary>
    /// <param name="folder">The folder.</param>
    public static RecordFolder Open(string folder)
    {
        var opened = new RecordFolder(folder);
        opened.Check();
        return opened;
    }

    /// <summary>Reads the rows of a file, each with its lines.</summary>
    public IEnumerable<FileRecord> Read(FileForm form)
    {
        if (!counts.ContainsKey(form))
            yield break;
        var lineForm = FileSet.Lines.FirstOrDefault(l => l.LinesOf == form);
        foreach (var line in Lines(form))
        {
            var row = new FileRow(form, line);
            List<FileRow>? owned = null;
            if (lineForm is not null)
                ByOwner(lineForm).TryGetValue(Owner(row), out owned);
            yield return Parse(row, owned ?? []);
        }
    }

    /// <summary>Lines of a file of lines whose thing the folder does not have.</summary>
    public IEnumerable<Fault> LinesWithoutOwner(FileForm lineForm)
    {
        var owners = Owners(lineForm.LinesOf!);
        return ByOwner(lineForm).Where(o => !owners.Contains(o.Key)).SelectMany(o => o.Value).Select(row => new Fault(
            row, lineForm.Keys.Count > 1 ? lineForm.Keys[1].Name : lineForm.Keys[0].Name, Fault.LineWithoutOwner, $"must be that of a row of {lineForm.LinesOf}, with the same {string.Join(", ", lineForm.LinesOf!.Keys.Select(k => k.Name))}"));
    }

    private void Check()
    {
        if (!Directory.Exists(folder))
        {
            problems.Add(new CsvProblem(folder, 0, "(folder)", folder, "must be a folder that exists"));
            return;
        }

        var known = FileSet.All.Select(f => f.Name).ToList();
        foreach (var stranger in Directory.EnumerateFiles(folder)
            .Where(f => Path.GetExtension(f).Equals(".csv", StringComparison.OrdinalIgnoreCase) && !known.Contains(Path.GetFileName(f), StringComparer.Ordinal)))
        {
            problems.Add(new CsvProblem(stranger, 0, "(file)", Path.GetFileName(stranger), $"must be one of the files {string.Join(", ", known)}"));
        }

        foreach (var form in FileSet.All.Where(f => File.Exists(Path.Combine(folder, f.Name))))
            counts.Add(form, CheckFile(form));
        if (counts.Count == 0 && problems.Count == 0)
            problems.Add(new CsvProblem(folder, 0, "(folder)", folder, $"must be a folder with one of the files {string.Join(", ", known)}"));
    }

    private int CheckFile(FileForm form)
    {
        var count = 0;
        foreach (var line in Lines(form))
        {
            count++;
            NeedsSource |= form.Keys[0].Name == "source" && !line.Columns.ContainsKey("source");
        }

        return count;
    }

    private Dictionary<string, List<FileRow>> ByOwner(FileForm lineForm)
    {
        if (lines.TryGetValue(lineForm, out var byOwner))
            return byOwner;
        byOwner = lines[lineForm] = new Dictionary<string, List<FileRow>>(StringComparer.Ordinal);
        foreach (var row in counts.ContainsKey(lineForm) ? Lines(lineForm).Select(l => new FileRow(lineForm, l)) : [])
        {
            if (!byOwner.TryGetValue(Owner(row), out var owned))
                byOwner.Add(Owner(row), owned = []);
            owned.Add(row);
        }

        return byOwner;
    }

    private IEnumerable<CsvLine> Lines(FileForm form) =>
        CsvFile.Read(Path.Combine(folder, form.Name), form.Required, form.Optional, problems);

    private HashSet<string> Owners(FileForm form) => counts.ContainsKey(form)
        ? Lines(form).Select(l => Owner(new FileRow(form, l))).ToHashSet(StringComparer.Ordinal)
        : [];

    // Lines and the thing that they belong to meet by what the cells say, whether a guard stands before it or not.
    private string Owner(FileRow row) => string.Join('\n', row.Form.Keys.Select(k => FormulaGuard.Off(KeyText(row, k))));

    private string KeyText(FileRow row, Column key) => (key.Name, row.Line.Text(key.Name)) switch
    {
        ("source", "") => Source,
        ("revision", "" or "0") => "1",
        var (_, text) => text,
    };

    private FileRecord Parse(FileRow row, IReadOnlyList<FileRow> owned)
    {
        var faults = new List<Fault>();
        var thing = Fill(row, faults);
        foreach (var line in owned)
            ((IList)line.Form.Field!.Accessor.GetValue(thing)).Add(Fill(line, faults));
        if (row.Form.Field is null)
            return new FileRecord(thing, row, owned, faults);
        var record = new Record { Key = new RecordKey() };
        foreach (var key in row.Form.Keys)
            Set(record.Key, key, row, KeyText(row, key), faults);
        row.Form.Field.Accessor.SetValue(record, thing);
        return new FileRecord(record, row, owned, faults);
    }

    private static IMessage Fill(FileRow row, List<Fault> faults)
    {
        var message = row.Form.Message.Parser.ParseFrom(ByteString.Empty);
        foreach (var column in row.Form.Columns.Where(c => c.Field?.ContainingType == row.Form.Message))
            Set(message, column, row, TextOf(row, column.Name), faults);
        return message;
    }

    // The texts in which the contract takes line breaks may end with one; what was exported must come back as it was.
    private static string TextOf(FileRow row, string column) =>
        column is "note" or "reason" or "why" && row.Line.Text(column).Length > 0 ? row.Line.Raw(column) : row.Line.Text(column);

    private static void Set(IMessage message, Column column, FileRow row, string text, List<Fault> faults)
    {
        if (text.Length == 0 && !column.MustBeGiven)
            return;
        if (Cell.Read(column.Field!, text) is { } value)
            column.Field!.Accessor.SetValue(message, value);
        else
            faults.Add(new Fault(row, column.Name, Fault.CellNotReadable, Fault.Words(Cell.Rule(column.Field!), text, Cell.Nearest(column.Field!, text))));
    }
}

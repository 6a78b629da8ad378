using Google.Protobuf.Reflection;

namespace FleetTrend.Cli.RecordFiles;

/// <summary>
/// What one file of the set holds. Its columns are the fields of a message of the contract, by the same names, so that a field
/// added there is a column here.
/// </summary>
internal sealed class FileForm
{
    /// <summary>Columns that a rejects file adds; an import passes over them.</summary>
    public static readonly IReadOnlyList<string> RejectColumns = ["reject_line", "reject_reason", "reject_column", "reject_why"];

    /// <summary>Describes a file.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="message">The message that a row fills.</param>
    /// <param name="keys">Columns that say which thing a row is about, or belongs to.</param>
    /// <param name="added">Further columns that are no field of the message.</param>
    public FileForm(string name, MessageDescriptor message, IReadOnlyList<Column> keys, params IReadOnlyList<string> added)
    {
        Name = name;
        Message = message;
        Keys = keys;
        Columns =
        [
            .. keys,
            .. message.Fields.InDeclarationOrder()
                .Where(f => !f.IsRepeated && (f.FieldType != FieldType.Message || f.MessageType == Google.Type.Date.Descriptor))
                .Where(f => keys.All(k => k.Field != f))
                .Select(f => new Column(f.Name, f)),
            .. added.Select(a => new Column(a, null)),
        ];
    }

    /// <summary>Name of the file.</summary>
    public string Name { get; }

    /// <summary>The message that a row fills.</summary>
    public MessageDescriptor Message { get; }

    /// <summary>Columns that say which thing a row is about, or belongs to.</summary>
    public IReadOnlyList<Column> Keys { get; }

    /// <summary>All columns, keys first.</summary>
    public IReadOnlyList<Column> Columns { get; }

    /// <summary>Where rows are lines of a thing of another file: that file.</summary>
    public FileForm? LinesOf { get; init; }

    /// <summary>Where rows are lines: the repeated field that they fill. Where it is a record: the field of the envelope.</summary>
    public FieldDescriptor? Field { get; init; }

    /// <summary>Columns without which a file is none of these.</summary>
    public IReadOnlyList<string> Required =>
        [.. Columns.Where(c => c.MustBeGiven || (Keys.Contains(c) && c.Name is not ("source" or "revision"))).Select(c => c.Name)];

    /// <summary>Columns that may be left out.</summary>
    public IReadOnlyList<string> Optional =>
        [.. Columns.Select(c => c.Name).Except(Required, StringComparer.Ordinal), .. RejectColumns];

    /// <inheritdoc/>
    public override string ToString() => Name;
}

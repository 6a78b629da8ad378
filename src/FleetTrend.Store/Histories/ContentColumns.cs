using FleetTrend.Records;

namespace FleetTrend.Store.Histories;

/// <summary>Where the content of a kind of record stands, whatever the kind.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Table">Its table.</param>
/// <param name="Columns">Columns of the content, each with the prefix <c>content.</c></param>
internal abstract record ContentColumns(RecordKind Kind, string Table, string Columns)
{
    /// <summary>Columns of the content as COPY names them.</summary>
    public string CopyColumns => Columns.Replace("content.", "", StringComparison.Ordinal);

    /// <summary>The content that a row makes.</summary>
    public abstract RecordContent ReadAny(ContentRow row);

    /// <summary>The values of a content, in the order of the columns.</summary>
    public abstract IReadOnlyList<object?> WriteAny(RecordContent content);
}

/// <summary>Where the content of a kind of record stands, what its row makes, and what its row holds.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Table">Its table.</param>
/// <param name="Columns">Columns of the content, each with the prefix <c>content.</c></param>
/// <param name="Read">Makes the content.</param>
/// <param name="Write">The values of a content, in the order of the columns.</param>
/// <param name="Date">The day by which contents are ordered.</param>
internal sealed record ContentColumns<T>(
    RecordKind Kind,
    string Table,
    string Columns,
    Func<ContentRow, T> Read,
    Func<T, IReadOnlyList<object?>> Write,
    Func<T, DateOnly> Date)
    : ContentColumns(Kind, Table, Columns)
    where T : RecordContent
{
    public override RecordContent ReadAny(ContentRow row) => Read(row);

    public override IReadOnlyList<object?> WriteAny(RecordContent content) => Write((T)content);
}

using FleetTrend.Store.Mapping;

namespace FleetTrend.Store.Histories;

/// <summary>Where the content of a kind of record stands, whatever the kind.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Table">Its table.</param>
/// <param name="Columns">Columns of the content, each with the prefix <c>content.</c></param>
internal abstract record ContentColumns(RecordKind Kind, string Table, string Columns)
{
    /// <summary>The content that a row makes.</summary>
    public abstract object ReadAny(ContentRow row);
}

/// <summary>Where the content of a kind of record stands, and what its row makes.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Table">Its table.</param>
/// <param name="Columns">Columns of the content, each with the prefix <c>content.</c></param>
/// <param name="Read">Makes the content.</param>
/// <param name="Date">The day by which contents are ordered.</param>
internal sealed record ContentColumns<T>(RecordKind Kind, string Table, string Columns, Func<ContentRow, T> Read, Func<T, DateOnly> Date)
    : ContentColumns(Kind, Table, Columns)
    where T : notnull
{
    public override object ReadAny(ContentRow row) => Read(row);
}

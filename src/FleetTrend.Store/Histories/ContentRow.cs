using FleetTrend.Records;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Inspections;
using Npgsql;

namespace FleetTrend.Store.Histories;

/// <summary>A row with the columns of one content, counted from 0.</summary>
/// <param name="reader">Stands at the row.</param>
/// <param name="first">Index of the first column of the content.</param>
/// <param name="recordId">The record.</param>
/// <param name="registration">Its aircraft; empty for what belongs to none.</param>
/// <param name="assignments">Assignments by record, of airframes.</param>
/// <param name="looks">Lines by record, of inspections.</param>
internal sealed class ContentRow(
    NpgsqlDataReader reader,
    int first,
    long recordId,
    string registration,
    IReadOnlyDictionary<long, List<Assignment>> assignments,
    IReadOnlyDictionary<long, List<LocationLook>> looks)
{
    public string Registration => registration;

    public IReadOnlyList<Assignment> Assignments => assignments[recordId];

    public IReadOnlyList<LocationLook> Looks => looks.TryGetValue(recordId, out var lines) ? lines : [];

    public string Text(int column) => reader.GetString(first + column);

    public string? TextOrNull(int column) => IsNull(column) ? null : Text(column);

    public IReadOnlyList<string> Texts(int column) => reader.GetFieldValue<string[]>(first + column);

    public DateOnly Day(int column) => reader.GetFieldValue<DateOnly>(first + column);

    public DateOnly? DayOrNull(int column) => IsNull(column) ? null : Day(column);

    public Hours Time(int column) => Hours.FromTenths((long)(reader.GetDecimal(first + column) * 10));

    public Hours? TimeOrNull(int column) => IsNull(column) ? null : Time(column);

    public int Whole(int column) => reader.GetInt32(first + column);

    public int? WholeOrNull(int column) => IsNull(column) ? null : Whole(column);

    public short Code(int column) => reader.GetInt16(first + column);

    public bool Flag(int column) => reader.GetBoolean(first + column);

    public double? NumberOrNull(int column) => IsNull(column) ? null : reader.GetDouble(first + column);

    private bool IsNull(int column) => reader.IsDBNull(first + column);
}

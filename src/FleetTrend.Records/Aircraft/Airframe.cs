namespace FleetTrend.Records.Aircraft;

/// <summary>One aircraft: its registration mark, where it belongs, and since when its records are complete.</summary>
public sealed record Airframe : RecordContent
{
    /// <summary>Registration mark, upper case, such as <c>ZZ-A01</c>.</summary>
    public required string Registration { get; init; }

    /// <summary>From this day on every look, finding, action and change of parts is in the records.</summary>
    /// <remarks>A part installed before it is left-truncated: earlier failures at its location would not have been seen.</remarks>
    public required DateOnly WatchStartDate { get; init; }

    /// <summary>Base and type group over time, ascending by date without repeated dates; at least one.</summary>
    public required IReadOnlyList<Assignment> Assignments { get; init; }

    /// <summary>Time in service minus meter value for the first meter; zero where the meter has counted from new.</summary>
    public Hours MeterOffset { get; init; }

    /// <summary>The day it left the fleet, or null while it flies.</summary>
    public DateOnly? RetiredDate { get; init; }

    /// <inheritdoc/>
    public override RecordKind RecordKind => RecordKind.Airframe;

    /// <inheritdoc/>
    public override T Accept<T>(IRecordContentVisitor<T> visitor) => visitor.Visit(this);
}

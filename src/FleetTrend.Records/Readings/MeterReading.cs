namespace FleetTrend.Records.Readings;

/// <summary>A meter value read on a day.</summary>
/// <param name="Registration">The aircraft.</param>
/// <param name="ReadingDate">The day of the reading.</param>
/// <param name="MeterHours">What the meter showed; not time in service once a meter has been changed.</param>
public sealed record MeterReading(string Registration, DateOnly ReadingDate, Hours MeterHours) : RecordContent
{
    /// <inheritdoc/>
    public override RecordKind RecordKind => RecordKind.MeterReading;

    /// <inheritdoc/>
    public override T Accept<T>(IRecordContentVisitor<T> visitor) => visitor.Visit(this);
}

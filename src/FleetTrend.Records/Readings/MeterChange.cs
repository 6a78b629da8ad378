namespace FleetTrend.Records.Readings;

/// <summary>A meter was replaced or reset: time in service goes on from the old value while the meter shows the new one.</summary>
/// <param name="Registration">The aircraft.</param>
/// <param name="ChangeDate">The day of the change; readings of that day are of the new meter.</param>
/// <param name="OldMeterHours">Last value of the old meter.</param>
/// <param name="NewMeterHours">First value of the new meter.</param>
public sealed record MeterChange(string Registration, DateOnly ChangeDate, Hours OldMeterHours, Hours NewMeterHours) : RecordContent
{
    /// <inheritdoc/>
    public override RecordKind RecordKind => RecordKind.MeterChange;

    /// <inheritdoc/>
    public override T Accept<T>(IRecordContentVisitor<T> visitor) => visitor.Visit(this);
}

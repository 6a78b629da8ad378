namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>meter_changes</c>.</summary>
internal sealed class MeterChangeRow
{
    public long RecordId { get; set; }

    public DateOnly ChangeDate { get; set; }

    public decimal OldMeterHours { get; set; }

    public decimal NewMeterHours { get; set; }
}

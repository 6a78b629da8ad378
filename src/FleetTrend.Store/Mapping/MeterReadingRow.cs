namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>meter_readings</c>.</summary>
internal sealed class MeterReadingRow
{
    public long RecordId { get; set; }

    public DateOnly ReadingDate { get; set; }

    public decimal MeterHours { get; set; }
}

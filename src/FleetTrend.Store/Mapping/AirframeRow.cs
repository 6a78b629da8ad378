namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>airframes</c>.</summary>
internal sealed class AirframeRow
{
    public long RecordId { get; set; }

    public DateOnly WatchStartDate { get; set; }

    public decimal MeterOffsetHours { get; set; }

    public DateOnly? RetiredDate { get; set; }
}

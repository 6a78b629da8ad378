namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>inspections</c>.</summary>
internal sealed class InspectionRow
{
    public long RecordId { get; set; }

    public DateOnly InspectionDate { get; set; }

    public decimal TimeInServiceHours { get; set; }

    public short Occasion { get; set; }
}

namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>removals</c>.</summary>
internal sealed class RemovalRow
{
    public long RecordId { get; set; }

    public string Location { get; set; } = "";

    public DateOnly RemovalDate { get; set; }

    public decimal TimeInServiceHours { get; set; }

    public short Reason { get; set; }

    public bool ExaminedGood { get; set; }

    public string? SerialNumber { get; set; }
}

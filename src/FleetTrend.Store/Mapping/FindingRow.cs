namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>findings</c>.</summary>
internal sealed class FindingRow
{
    public long RecordId { get; set; }

    public string Location { get; set; } = "";

    public DateOnly FoundDate { get; set; }

    public decimal TimeInServiceHours { get; set; }

    public short Condition { get; set; }

    public short Grade { get; set; }

    public double? SizeMm { get; set; }

    public short TraceColour { get; set; }

    public short Method { get; set; }

    public string? SameEventAs { get; set; }

    public string? Note { get; set; }
}

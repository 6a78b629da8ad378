namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>actions</c>.</summary>
internal sealed class ActionRow
{
    public long RecordId { get; set; }

    public string Location { get; set; } = "";

    public DateOnly ActionDate { get; set; }

    public decimal TimeInServiceHours { get; set; }

    public short Kind { get; set; }

    public decimal? PartHours { get; set; }

    public string? Note { get; set; }
}

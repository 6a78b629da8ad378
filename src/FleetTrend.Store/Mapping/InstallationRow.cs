namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>installations</c>.</summary>
internal sealed class InstallationRow
{
    public long RecordId { get; set; }

    public string Location { get; set; } = "";

    public DateOnly InstallationDate { get; set; }

    public decimal TimeInServiceHours { get; set; }

    public decimal? PartHours { get; set; }

    public string? SerialNumber { get; set; }

    public string? PartNumber { get; set; }
}

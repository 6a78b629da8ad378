namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>location_looks</c>.</summary>
internal sealed class LocationLookRow
{
    public long RecordId { get; set; }

    public string Location { get; set; } = "";

    public short State { get; set; }

    public short Method { get; set; }
}

namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>layout_locations</c>.</summary>
internal sealed class LayoutLocationRow
{
    public int LayoutId { get; set; }

    public string Path { get; set; } = "";

    public LocationRow? Location { get; set; }

    public int Position { get; set; }

    public string LookFor { get; set; } = "";

    public string? JascCode { get; set; }
}

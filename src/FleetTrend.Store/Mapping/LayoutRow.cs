namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>layouts</c>.</summary>
internal sealed class LayoutRow
{
    public int Id { get; set; }

    public string Name { get; set; } = "";

    public string Title { get; set; } = "";

    public List<LayoutLocationRow> Locations { get; } = [];
}

namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>type_groups</c>.</summary>
internal sealed class TypeGroupRow
{
    public int Id { get; set; }

    public string Name { get; set; } = "";

    public string Title { get; set; } = "";

    public int LayoutId { get; set; }

    public LayoutRow? Layout { get; set; }
}

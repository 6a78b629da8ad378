namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>locations</c>: a path has one kind in every layout.</summary>
internal sealed class LocationRow
{
    public string Path { get; set; } = "";

    public string Kind { get; set; } = "";

    public LocationKindRow? KindRow { get; set; }
}

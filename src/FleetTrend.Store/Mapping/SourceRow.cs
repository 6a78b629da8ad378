namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>sources</c>.</summary>
internal sealed class SourceRow
{
    public int Id { get; set; }

    public string Name { get; set; } = "";

    public string Title { get; set; } = "";

    public DateTimeOffset CreateTime { get; set; }
}

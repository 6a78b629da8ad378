namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>first_links</c>: a link with which somebody becomes the administrator.</summary>
internal sealed class FirstLinkRow
{
    public byte[] TokenHash { get; set; } = [];

    public DateTimeOffset CreateTime { get; set; }
}

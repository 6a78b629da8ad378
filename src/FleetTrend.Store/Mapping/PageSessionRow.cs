namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>page_sessions</c>: a browser that is signed in.</summary>
internal sealed class PageSessionRow
{
    public byte[] IdHash { get; set; } = [];

    public string KeyId { get; set; } = "";

    public ApiKeyRow? Key { get; set; }

    public DateTimeOffset CreateTime { get; set; }

    public DateTimeOffset LastUsedTime { get; set; }
}

using FleetTrend.Store.People;

namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>page_sessions</c>: a browser that is signed in.</summary>
internal sealed class PageSessionRow
{
    public byte[] IdHash { get; set; } = [];

    public long PersonId { get; set; }

    public Person? Person { get; set; }

    public string SecurityStamp { get; set; } = "";

    public DateTimeOffset CreateTime { get; set; }

    public DateTimeOffset LastUsedTime { get; set; }
}

namespace FleetTrend.Store.Mapping;

/// <summary>The one row of <c>knowledge</c>: the latest as-of moment that was fixed; no record is accepted at or before it any more.</summary>
internal sealed class KnowledgeRow
{
    public short Id { get; set; }

    public DateTimeOffset LastAsOf { get; set; }
}

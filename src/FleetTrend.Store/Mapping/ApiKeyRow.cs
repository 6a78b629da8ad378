using FleetTrend.Store.Keys;

namespace FleetTrend.Store.Mapping;

/// <summary>A row of <c>api_keys</c>.</summary>
internal sealed class ApiKeyRow
{
    public string Id { get; set; } = "";

    public long Number { get; set; }

    public string Name { get; set; } = "";

    public int? SourceId { get; set; }

    public SourceRow? Source { get; set; }

    public List<KeyScope> Scopes { get; set; } = [];

    public byte[] SecretHash { get; set; } = [];

    public DateTimeOffset CreateTime { get; set; }

    public DateTimeOffset? LastUsedTime { get; set; }

    public DateTimeOffset? RevokeTime { get; set; }
}

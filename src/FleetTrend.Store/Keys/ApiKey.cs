namespace FleetTrend.Store.Keys;

/// <summary>A key as it is stored; the secret itself is nowhere.</summary>
public sealed record ApiKey
{
    /// <summary>Identifier: 12 of a-z and 2-7. No secret: it stands in lists and logs.</summary>
    public required string Id { get; init; }

    /// <summary>For people: who or what uses it.</summary>
    public required string Name { get; init; }

    /// <summary>The source whose records it may push; null for none.</summary>
    public required string? Source { get; init; }

    /// <summary>What it allows, at least one.</summary>
    public required IReadOnlyList<KeyScope> Scopes { get; init; }

    /// <summary>When it was made (UTC).</summary>
    public required DateTimeOffset CreateTime { get; init; }

    /// <summary>When a call last came with it, to the minute (UTC); null before the first.</summary>
    public DateTimeOffset? LastUsedTime { get; init; }

    /// <summary>When it was revoked (UTC); null while it is good.</summary>
    public DateTimeOffset? RevokeTime { get; init; }
}

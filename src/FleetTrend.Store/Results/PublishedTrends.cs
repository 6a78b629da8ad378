namespace FleetTrend.Store.Results;

/// <summary>A moment whose results are published: which sets of results make it, and what is said of the fleet as a whole.</summary>
public sealed record PublishedTrends
{
    /// <summary>The moment of knowledge (UTC, microseconds); there is one per moment.</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>Version of the code that computed it.</summary>
    public required string CodeVersion { get; init; }

    /// <summary>The choices behind it, as JSON text.</summary>
    public required string ParametersJson { get; init; }

    /// <summary>Sets of results, by type group; empty where they are not kept any more.</summary>
    public required IReadOnlyList<long> SetIds { get; init; }

    /// <summary>What was found of the fleet as a whole, as JSON text.</summary>
    public required string FleetJson { get; init; }

    /// <summary>False where only headline figures are still kept, or none.</summary>
    public bool IsWhole { get; init; } = true;
}

namespace FleetTrend.Store.Snapshots;

/// <summary>Computed trends, kept as they were.</summary>
public sealed record StoredSnapshot
{
    /// <summary>The moment of knowledge (UTC, microseconds); there is one snapshot per moment.</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>Version of the code that computed it.</summary>
    public required string CodeVersion { get; init; }

    /// <summary>The choices behind it, as JSON text.</summary>
    public required string ParametersJson { get; init; }

    /// <summary>The trends, as JSON text; it comes back to the byte.</summary>
    public required string TrendsJson { get; init; }
}

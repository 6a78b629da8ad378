namespace FleetTrend.Store.Parameters;

/// <summary>Parameters of the trends as they were set.</summary>
/// <param name="Revision">Number of the change; 0 for the shipped defaults, which hold until the first change.</param>
/// <param name="ValuesJson">Every parameter as JSON, in the form of the trends; null for the shipped defaults.</param>
public sealed record ParameterRevision(int Revision, string? ValuesJson)
{
    /// <summary>The shipped defaults.</summary>
    public static ParameterRevision Shipped { get; } = new(0, null);

    /// <summary>Since when they are in force (UTC); null for the shipped defaults.</summary>
    public DateTimeOffset? ChangeTime { get; init; }

    /// <summary>Name of the key that changed them; empty for the shipped defaults.</summary>
    public string ChangedBy { get; init; } = "";

    /// <summary>Why; empty for the shipped defaults.</summary>
    public string Note { get; init; } = "";
}

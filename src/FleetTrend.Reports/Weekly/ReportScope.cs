namespace FleetTrend.Reports.Weekly;

/// <summary>What a report is about: the whole fleet or one base.</summary>
/// <param name="Base">The base, or null for the whole fleet.</param>
public sealed record ReportScope(string? Base)
{
    /// <summary>The whole fleet.</summary>
    public static ReportScope WholeFleet { get; } = new((string?)null);

    /// <summary>How it is called in a sentence.</summary>
    public string Title => Base ?? "the whole fleet";

    /// <summary>Whether something at <paramref name="atBase"/> is inside.</summary>
    public bool Covers(string atBase) => Base is null || Base == atBase;
}

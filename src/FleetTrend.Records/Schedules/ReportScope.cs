namespace FleetTrend.Records.Schedules;

/// <summary>What a report is about: the whole fleet, one base, or one type group.</summary>
/// <param name="Base">The base; null for all.</param>
/// <param name="TypeGroup">The type group, where no base is told; null for all.</param>
public sealed record ReportScope(string? Base, string? TypeGroup = null)
{
    /// <summary>What stands for all bases where a base is asked for; no base may be called so.</summary>
    public const string AllBases = "*";

    /// <summary>The whole fleet.</summary>
    public static ReportScope WholeFleet { get; } = new((string?)null);

    /// <summary>How it is called in a sentence.</summary>
    public string Title => Base ?? TypeGroup ?? "the whole fleet";

    /// <summary>Whether it is about everything.</summary>
    public bool IsWholeFleet => Base is null && TypeGroup is null;

    /// <summary>The scope of a base as it is asked for.</summary>
    /// <param name="base">The base; <see cref="AllBases"/> for all.</param>
    /// <param name="typeGroup">The type group; null or empty for all.</param>
    public static ReportScope Of(string @base, string? typeGroup = null) =>
        new(@base is AllBases or "" ? null : @base, string.IsNullOrEmpty(typeGroup) ? null : typeGroup);

    /// <summary>Whether something at <paramref name="atBase"/> is inside.</summary>
    public bool Covers(string atBase) => Base is null || Base == atBase;
}

using FleetTrend.Trends.Flags;

namespace FleetTrend.Reports.Weekly;

/// <summary>The order in which flags are shown: new before old, strong before weak.</summary>
internal static class FlagOrder
{
    /// <summary>Flags in order. Ties are broken by subject, so that the same flags always give the same order.</summary>
    public static IEnumerable<FlagLine> Sort(IEnumerable<FlagLine> flags) => flags
        .OrderBy(f => f.State)
        .ThenByDescending(f => f.Flag.Tier)
        .ThenByDescending(f => f.Flag.Change?.LogScore ?? double.NegativeInfinity)
        .ThenBy(f => f.Flag.QValue ?? double.PositiveInfinity)
        .ThenByDescending(f => f.Flag.Observed)
        .ThenBy(f => f.Flag.Subject, StringComparer.Ordinal);

    /// <summary>What a flag is about: an aircraft, or a base.</summary>
    public static string Subject(ProposedFlag flag) => flag.Registration ?? flag.Base;
}

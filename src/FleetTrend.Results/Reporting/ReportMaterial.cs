using FleetTrend.Reports.Weekly;
using FleetTrend.Store.Flags;
using FleetTrend.Trends;
using FleetTrend.Trends.Silence;

namespace FleetTrend.Results.Reporting;

/// <summary>What all reports of one moment are put together from.</summary>
public sealed class ReportMaterial
{
    /// <summary>The trends of the moment.</summary>
    public required TrendSnapshot Current { get; init; }

    /// <summary>Flags that are not closed.</summary>
    public required IReadOnlyList<StoredFlag> Flags { get; init; }

    /// <summary>Data problems that the records have.</summary>
    public required IReadOnlyList<DataProblemLine> DataProblems { get; init; }

    /// <summary>Records that wait; null where none does.</summary>
    public required HeldLine? Held { get; init; }

    /// <summary>Sources that have stopped sending.</summary>
    public required IReadOnlyList<SilentSource> SilentSources { get; init; }

    /// <summary>Trends with which reports were compared so far, by moment: bases often share it.</summary>
    internal Dictionary<DateTimeOffset, TrendSnapshot> Earlier { get; } = [];

    /// <summary>Bases where an aircraft flies, in ordinal order.</summary>
    public IReadOnlyList<string> Bases =>
        [.. Current.Fleet.Where(l => l.RetiredDate is null).Select(l => l.Base).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
}

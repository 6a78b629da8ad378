using FleetTrend.Records.Schedules;
using FleetTrend.Trends.Silence;

namespace FleetTrend.Reports.Weekly;

/// <summary>
/// Everything a report is made from besides the snapshots, in plain values: stored as JSON beside the report, it lets the
/// same report be made again.
/// </summary>
public sealed record ReportInputs
{
    /// <summary>The whole fleet, one base or one type group.</summary>
    public required ReportScope Scope { get; init; }

    /// <summary>The days covered.</summary>
    public required ReportPeriod Period { get; init; }

    /// <summary>As-of moment of the snapshot to compare with (UTC); null where there is none.</summary>
    public DateTimeOffset? PreviousAsOf { get; init; }

    /// <summary>Flags that are not closed, of any base; those outside the scope are left out of the report.</summary>
    public required IReadOnlyList<FlagLine> Flags { get; init; }

    /// <summary>Data checks of the problems in the snapshot.</summary>
    public IReadOnlyList<DataProblemLine> DataProblems { get; init; } = [];

    /// <summary>Records that wait; null where none does.</summary>
    public HeldLine? Held { get; init; }

    /// <summary>Sources that have stopped sending.</summary>
    public IReadOnlyList<SilentSource> SilentSources { get; init; } = [];

    /// <summary>Where the pages are, such as <c>http://maintenance.example:8080/</c>; null leaves links out.</summary>
    public Uri? PagesUrl { get; init; }

    /// <summary>A line that stands first in the report, such as that the data are synthetic; null for none.</summary>
    public string? Notice { get; init; }
}

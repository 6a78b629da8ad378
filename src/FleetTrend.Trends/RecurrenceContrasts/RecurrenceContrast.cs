using FleetTrend.Records.Findings;
using FleetTrend.Trends.Recurrences;

namespace FleetTrend.Trends.RecurrenceContrasts;

/// <summary>
/// One aircraft beside the others at a place where a condition came back: its own count by time in service, and the mean of the others
/// without it. Both count the events of the rate and end where nobody was watched any more.
/// </summary>
public sealed record RecurrenceContrast
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>The condition.</summary>
    public required Condition Condition { get; init; }

    /// <summary>Time in service at each of its events that count, ascending.</summary>
    public required IReadOnlyList<double> FoundHours { get; init; }

    /// <summary>Its events besides that do not count: the first look found them.</summary>
    public int PresentAtEntryCount { get; init; }

    /// <summary>Its events besides that do not count: found in no watched hours.</summary>
    public int NotWatchedCount { get; init; }

    /// <summary>Hours in which it was watched there, ascending and apart.</summary>
    public required IReadOnlyList<WatchedSpan> Watched { get; init; }

    /// <summary>Other aircraft watched there.</summary>
    public required int OthersCount { get; init; }

    /// <summary>Their events that count.</summary>
    public required int OthersEvents { get; init; }

    /// <summary>The mean cumulative function of the others, a point per distinct event time; empty where they had none.</summary>
    public required IReadOnlyList<MeanCumulativePoint> Others { get; init; }

    /// <summary>Hours in which at least one of the others was watched, ascending and apart; empty where there is no other.</summary>
    public required IReadOnlyList<WatchedSpan> OthersWatched { get; init; }

    /// <summary>Name of the method of the mean and its source.</summary>
    public required string Method { get; init; }
}

using FleetTrend.Trends.DueLooks;

namespace FleetTrend.Trends.Scores;

/// <summary>The day that was named for the next look of an aircraft.</summary>
/// <param name="Registration">The aircraft.</param>
/// <param name="Location">Path of the location that was due first.</param>
/// <param name="DueDate">The day.</param>
/// <param name="DueHours">Time in service by which the look was due.</param>
public sealed record KeptDue(string Registration, string Location, DateOnly DueDate, double DueHours)
{
    /// <summary>That of a look that is due; null where none was named, or it was past already.</summary>
    public static KeptDue? Of(DueLook due)
    {
        ArgumentNullException.ThrowIfNull(due);
        return due is { IsOverdue: false, DueDate: { } day, LatestHours: { } latest, HoursToNext: { } next }
            ? new KeptDue(due.Registration, due.Groups[0].Locations[0], day, Math.Round(latest + next, 1))
            : null;
    }
}

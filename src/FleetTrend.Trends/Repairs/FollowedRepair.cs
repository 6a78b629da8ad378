using FleetTrend.Observations;
using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Trends.Repairs;

/// <summary>
/// An action that closed a condition at a location, and how long that held: until the condition was found again, or good at the last look before the place
/// was renewed, the aircraft changed type group, or now.
/// </summary>
internal sealed record FollowedRepair
{
    private const long LeastTenths = 1;

    private FollowedRepair()
    {
    }

    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Path of the location.</summary>
    public required string Location { get; init; }

    /// <summary>Its kind.</summary>
    public required LocationKind Kind { get; init; }

    /// <summary>The condition.</summary>
    public required Condition Condition { get; init; }

    /// <summary>What was done.</summary>
    public required ActionKind Action { get; init; }

    /// <summary>Type group in which it was done.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>Flight hours since the action at the last look that did not find it again; zero where there was none.</summary>
    public required Hours LastGood { get; init; }

    /// <summary>Flight hours since the action when it was found again; null where it was not.</summary>
    public Hours? Found { get; init; }

    /// <summary>Flight hours since the action for which it would have been seen to come back: to the last look, found again or not.</summary>
    public required Hours WatchedAfter { get; init; }

    /// <summary>Findings of the condition at the location until the action, in the hours watched.</summary>
    public required int FoundBefore { get; init; }

    /// <summary>Hours watched there until the action.</summary>
    public required Hours WatchedBefore { get; init; }

    /// <summary>As a life since the action; null where nobody has looked since.</summary>
    public Life? ForComparison() =>
        Found is { } found ? new Life(LastGood < found ? LastGood.Value : found.Value, found.Value)
        : LastGood.Tenths > 0 ? Life.GoodAt(LastGood.Value)
        : null;

    /// <summary>Every repair of an aircraft, by location, condition and time.</summary>
    public static IEnumerable<FollowedRepair> Find(AircraftObservations aircraft)
    {
        if (!aircraft.Events.Any(IsRepaired))
            return [];
        var exposures = aircraft.Exposures.ToLookup(e => e.Location, StringComparer.Ordinal);
        return aircraft.Events
            .GroupBy(e => (e.Location, e.Condition))
            .OrderBy(g => g.Key.Location, StringComparer.Ordinal).ThenBy(g => g.Key.Condition)
            .SelectMany(g => Find([.. g.OrderBy(e => e.FoundDate)], [.. exposures[g.Key.Location].OrderBy(e => e.From)]));
    }

    private static bool IsRepaired(LocationEvent e) => e is { ClosedBy: { } action, ClosedDate: not null, Actions.Count: > 0 } && ActionEffect.Closes(action);

    /// <summary>Of one condition at one location; one action may close several findings.</summary>
    private static IEnumerable<FollowedRepair> Find(List<LocationEvent> events, List<LocationExposure> exposures) => events
        .Where(IsRepaired)
        .GroupBy(e => e.ClosedDate!.Value)
        .OrderBy(g => g.Key)
        .Select(g => Follow(g.First(), events, exposures));

    private static FollowedRepair Follow(LocationEvent repaired, List<LocationEvent> events, List<LocationExposure> exposures)
    {
        var at = repaired.Actions[^1].At;
        var watched = Watched(exposures, at);
        var end = watched.Count == 0 ? at : watched[^1].To;
        if (repaired.NextRenewedAt is { } renewed && renewed < end)
            end = renewed;
        var again = events.Find(e => e.FoundDate > repaired.ClosedDate);
        var isBack = again is not null && watched.Count > 0 && again.Found <= end && !(repaired.NextRenewedAt < again.Found);
        var start = watched.Count == 0 ? at : watched[0].From;
        var lastGood = Since(isBack ? again!.LastGood ?? at : LastLook(watched, at, end));
        return new FollowedRepair
        {
            Registration = repaired.Registration,
            Location = repaired.Location,
            Kind = repaired.Kind,
            Condition = repaired.Condition,
            Action = repaired.ClosedBy!.Value,
            TypeGroup = watched.Count == 0 ? repaired.TypeGroup : watched[0].TypeGroup,
            LastGood = lastGood,
            WatchedAfter = isBack ? Since(watched[^1].To) : lastGood,
            Found = isBack ? Hours.FromTenths(Math.Max(LeastTenths, (again!.Found - at).Tenths)) : null,
            FoundBefore = events.Count(e => !e.PresentAtEntry && e.Found > start && e.Found <= at && e.FoundDate <= repaired.ClosedDate),
            WatchedBefore = start < at ? at - start : Hours.Zero,
        };

        Hours Since(Hours hours) => hours > at ? hours - at : Hours.Zero;
    }

    private static Hours LastLook(List<LocationExposure> watched, Hours at, Hours end)
    {
        var last = at;
        foreach (var exposure in watched)
        {
            foreach (var look in exposure.LookHours)
            {
                if (look > last && look <= end)
                    last = look;
            }
        }

        return last;
    }

    /// <summary>The watched hours around the action in one type group without a gap: also across bases.</summary>
    private static List<LocationExposure> Watched(List<LocationExposure> exposures, Hours at)
    {
        var here = exposures.FindIndex(e => e.From <= at && at < e.To);
        if (here < 0)
            here = exposures.FindLastIndex(e => e.From < at && at <= e.To); // nobody has looked since
        if (here < 0)
            return [];
        var (first, last) = (here, here);
        while (first > 0 && Joins(exposures[first - 1], exposures[first]))
            first--;
        while (last < exposures.Count - 1 && Joins(exposures[last], exposures[last + 1]))
            last++;
        return exposures[first..(last + 1)];

        static bool Joins(LocationExposure before, LocationExposure after) => before.To == after.From && before.TypeGroup == after.TypeGroup;
    }
}

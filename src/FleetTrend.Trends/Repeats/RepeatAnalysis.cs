using FleetTrend.Observations;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records;
using FleetTrend.Trends.Groups;

namespace FleetTrend.Trends.Repeats;

/// <summary>Places of one aircraft where a condition came back with no renewal between.</summary>
public sealed class RepeatAnalysis : Analysis<RepeatLocation>
{
    /// <summary>Makes the analysis.</summary>
    public RepeatAnalysis()
        : base("repeats")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(RepeatLocation item) => new(Registration: item.Registration, Base: item.Base);

    /// <inheritdoc/>
    protected override IEnumerable<RepeatLocation> Find(TypeGroupInputs inputs, ICollection<double> tests) =>
        inputs.Repeats.OrderBy(r => r.Registration, StringComparer.Ordinal);

    /// <summary>Most repeats first; the same order for the same places.</summary>
    public override IEnumerable<RepeatLocation> Order(IEnumerable<RepeatLocation> items) => items
        .OrderByDescending(Repeats)
        .ThenBy(r => r.ExposureHours)
        .ThenBy(r => r.Registration, StringComparer.Ordinal)
        .ThenBy(r => r.Location, StringComparer.Ordinal)
        .ThenBy(r => r.Condition);

    /// <summary>All such places of a type group, most repeats first.</summary>
    internal static IEnumerable<RepeatLocation> Find(TypeGroupInputs inputs) => Analyses.Repeats.Order(inputs.Aircraft.SelectMany(RepeatsOf)
        .Where(r => r.TypeGroup == inputs.TypeGroup)
        .Select(r => r with { Others = Others(r, inputs.Observations.At(r.Location)) }));

    private static RepeatOthers? Others(RepeatLocation repeat, LocationObservations location)
    {
        var others = location.Aircraft.Where(a => a.Registration != repeat.Registration && a.ExposureTenths > 0).ToList();
        return others.Count == 0
            ? null
            : new RepeatOthers(others.Count, others.Sum(a => a.Count(repeat.Condition)), others.Sum(a => a.ExposureTenths) / 10.0);
    }

    private static IEnumerable<RepeatLocation> RepeatsOf(AircraftObservations aircraft)
    {
        var events = aircraft.Events.GroupBy(e => (e.Location, e.Condition)).Where(g => g.Skip(1).Any()).ToList();
        if (events.Count == 0)
            return [];
        // Counted where the rate of the group counts it: within hours watched in that group.
        var places = aircraft.Exposures.ToLookup(e => (e.TypeGroup, e.Location));
        return events.Select(g => Repeat(aircraft, [.. InOrder(g)], IsCounted)).OfType<RepeatLocation>();

        bool IsCounted(LocationEvent e) => !e.PresentAtEntry
            && places[(e.TypeGroup, e.Location)].Any(x => x.Duration.Tenths > 0 && x.From < e.Found && e.Found <= x.To);
    }

    /// <summary>Events that came after the first one: two cracks at the first look are no repeat.</summary>
    public static int Repeats(RepeatLocation repeat) => repeat.Events.Count(e => e.FoundHours > repeat.Events[0].FoundHours);

    private static IEnumerable<LocationEvent> InOrder(IEnumerable<LocationEvent> events) => events
        .OrderBy(e => e.Found)
        .ThenBy(e => e.FoundDate)
        .ThenBy(e => e.Ordinal)
        .ThenBy(e => string.Join('|', e.Evidence), StringComparer.Ordinal);

    private static RepeatLocation? Repeat(AircraftObservations aircraft, List<LocationEvent> events, Func<LocationEvent, bool> isCounted)
    {
        var run = events.Where(e => e.RenewedAt is null).ToList();
        if (run.Count == 0 || run[^1].Found == run[0].Found)
            return null;

        var last = run[^1];
        return new RepeatLocation
        {
            Registration = aircraft.Registration,
            Base = aircraft.Base,
            TypeGroup = last.TypeGroup,
            Location = last.Location,
            Kind = last.Kind.Name,
            Condition = last.Condition,
            Events = [.. run.Select(e => Event(e, last.TypeGroup, isCounted(e)))],
            RenewedHours = events.Max(e => e.RenewedAt)?.Value,
            ExposureHours = WatchedTenths(aircraft, last.Location, events.Max(e => e.RenewedAt)) / 10.0,
            Evidence = [.. run.SelectMany(e => e.Evidence).Distinct()],
        };
    }

    private static RepeatEvent Event(LocationEvent e, string typeGroup, bool isCounted) =>
        new(e.FoundDate, e.Found.Value, e.SinceActionHours is { } action ? (e.Found - action).Value : null, e.ClosedBy)
        {
            SinceAction = e.SinceAction,
            ClosedDate = e.ClosedDate,
            Actions = [.. e.Actions.Select(a => new RepeatAction(a.Kind, a.Date, a.At.Value))],
            Counting = e.PresentAtEntry ? EventCounting.PresentAtEntry
                : !isCounted ? EventCounting.NotWatched
                : e.TypeGroup == typeGroup ? EventCounting.Counted
                : EventCounting.OtherTypeGroup,
        };

    /// <summary>Hours watched since the last renewal after an event, or since the start of the records.</summary>
    private static long WatchedTenths(AircraftObservations aircraft, string location, Hours? since) => aircraft.Exposures
        .Where(e => e.Location == location)
        .Sum(e => Math.Max(0, (e.To - (since is { } start && start > e.From ? start : e.From)).Tenths));
}

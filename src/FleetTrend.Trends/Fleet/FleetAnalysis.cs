using FleetTrend.Observations;

namespace FleetTrend.Trends.Fleet;

/// <summary>The fleet table: a line per aircraft, in its present type group.</summary>
public sealed class FleetAnalysis : Analysis<FleetLine>
{
    private const int RecentDays = 90;

    /// <summary>Makes the analysis.</summary>
    public FleetAnalysis()
        : base("fleet-lines")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(FleetLine item) => new(Registration: item.Registration, Base: item.Base);

    /// <summary>By registration.</summary>
    public override IEnumerable<FleetLine> Order(IEnumerable<FleetLine> items) => items.OrderBy(l => l.Registration, StringComparer.Ordinal);

    /// <inheritdoc/>
    protected override IEnumerable<FleetLine> Find(TypeGroupInputs inputs, ICollection<double> tests) =>
        inputs.Present.Select(o => Line(o, inputs.AsOfDate));

    private static FleetLine Line(AircraftObservations o, DateOnly asOf) => new()
    {
        Registration = o.Registration,
        Base = o.Base,
        TypeGroup = o.TypeGroup,
        RetiredDate = o.RetiredDate,
        LatestHours = o.Latest?.Hours.Value,
        LatestDate = o.Latest?.Date,
        HoursSinceInspection = o.Latest is { } latest && o.LatestInspection is { } inspection
                ? Math.Max(0, (latest.Hours - inspection.Hours).Value)
                : null,
        LatestInspectionDate = o.LatestInspection?.Date,
        RecentEvents = o.Events.Count(e => e.FoundDate > asOf.AddDays(-RecentDays) && e.FoundDate <= asOf),
        Events = [.. o.Events.CountBy(e => e.Condition).OrderBy(c => c.Key).Select(c => new ConditionCount(c.Key, c.Value))],
        OpenEvents = o.Events.Count(e => e.ClosedDate is null),
    };
}

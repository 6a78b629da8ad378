using FleetTrend.Records.Actions;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Readings;
using FleetTrend.Records.Sources;
using FleetTrend.Store.Holding;
using FleetTrend.Store.Mapping;

namespace FleetTrend.Store.Histories;

/// <summary>Which kind of record a content is, and what it refers to.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Registration">The aircraft; null for a retraction.</param>
/// <param name="Locations">Location paths.</param>
/// <param name="TypeGroups">Names of type groups.</param>
internal sealed record Mentions(
    RecordKind Kind, string? Registration, IEnumerable<string> Locations, IEnumerable<string> TypeGroups)
{
    /// <exception cref="ArgumentException">The content is no record.</exception>
    public static Mentions Of(object content) => content switch
    {
        Airframe airframe => new(RecordKind.Airframe, airframe.Registration, [], airframe.Assignments.Select(a => a.TypeGroup)),
        MeterReading reading => new(RecordKind.MeterReading, reading.Registration, [], []),
        MeterChange change => new(RecordKind.MeterChange, change.Registration, [], []),
        Installation installation => new(RecordKind.Installation, installation.Registration, [installation.Location], []),
        Removal removal => new(RecordKind.Removal, removal.Registration, [removal.Location], []),
        Inspection inspection => new(RecordKind.Inspection, inspection.Registration, inspection.Looks.Select(l => l.Location), []),
        Finding finding => new(RecordKind.Finding, finding.Registration, [finding.Location], []),
        CorrectiveAction action => new(RecordKind.Action, action.Registration, [action.Location], []),
        Retraction => new(RecordKind.Retraction, null, [], []),
        HeldContent => new(default, null, [], []),
        _ => throw new ArgumentException($"{content.GetType().Name} is no record.", nameof(content)),
    };
}

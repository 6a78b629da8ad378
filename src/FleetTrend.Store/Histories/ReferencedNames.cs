using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Practices;
using FleetTrend.Records.Readings;
using FleetTrend.Records.Sources;
using FleetTrend.Records.Spares;

namespace FleetTrend.Store.Histories;

/// <summary>What a record refers to by name.</summary>
/// <param name="Registration">The aircraft; null for what belongs to none.</param>
/// <param name="Locations">Location paths.</param>
/// <param name="TypeGroups">Names of type groups.</param>
internal sealed record ReferencedNames(string? Registration, IReadOnlyList<string> Locations, IReadOnlyList<string> TypeGroups)
{
    /// <summary>Of a record that refers to nothing.</summary>
    public static readonly ReferencedNames None = new(null, [], []);

    private static readonly Reader OfContent = new();

    /// <summary>The names in a content.</summary>
    public static ReferencedNames Read(RecordContent content) => content.Accept(OfContent);

    private sealed class Reader : IRecordContentVisitor<ReferencedNames>
    {
        public ReferencedNames Visit(Airframe airframe) =>
            new(airframe.Registration, [], [.. airframe.Assignments.Select(a => a.TypeGroup)]);

        public ReferencedNames Visit(MeterReading reading) => new(reading.Registration, [], []);

        public ReferencedNames Visit(MeterChange change) => new(change.Registration, [], []);

        public ReferencedNames Visit(Installation installation) => new(installation.Registration, [installation.Location], []);

        public ReferencedNames Visit(Removal removal) => new(removal.Registration, [removal.Location], []);

        public ReferencedNames Visit(Inspection inspection) =>
            new(inspection.Registration, [.. inspection.Looks.Select(look => look.Location)], []);

        public ReferencedNames Visit(Finding finding) => new(finding.Registration, [finding.Location], []);

        public ReferencedNames Visit(CorrectiveAction action) => new(action.Registration, [action.Location], []);

        public ReferencedNames Visit(PracticeChange change) => new(null, change.Locations, change.TypeGroup is { } group ? [group] : []);

        public ReferencedNames Visit(StockCount count) => None;

        public ReferencedNames Visit(Retraction retraction) => None;
    }
}

using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Timelines;

/// <summary>What happened at one location, day by day, ascending.</summary>
internal sealed record LocationTimeline(string Location, LocationKind Kind, IReadOnlyList<LocationDay> Days)
{
    /// <summary>A timeline for every location with at least one look, action or change of parts, ordered by path.</summary>
    public static IReadOnlyList<LocationTimeline> Build(
        AircraftRecords records, AircraftHours hours, IReadOnlyDictionary<RecordKey, CarriedHours> carried)
    {
        // A merged finding is the look of the one that stands, told again; so is its source's inspection of that place on that day.
        var lookOf = records.Merges.ToDictionary(m => m.Merged.Key, m => m.Kept.Content.FoundDate);
        var retold = records.Merges
            .GroupBy(m => (m.Merged.Key.Source, m.Merged.Content.Location, m.Merged.Content.FoundDate))
            .ToDictionary(g => g.Key, g => g.First().Kept.Content.FoundDate);
        var examined = records.Inspections
            .SelectMany(i => i.Content.Looks.Where(l => l.State == LookState.Examined).Select(l => (
                Spot: new Spot(l.Location, retold.GetValueOrDefault((i.Key.Source, l.Location, i.Content.InspectionDate), i.Content.InspectionDate)), i.Key)))
            .ToLookup(l => l.Spot, l => l.Key);
        var findings = records.Findings.ToLookup(f => new Spot(f.Content.Location, lookOf.GetValueOrDefault(f.Key, f.Content.FoundDate)));
        var actions = records.Actions.ToLookup(a => new Spot(a.Content.Location, a.Content.ActionDate));
        var removals = records.Removals.ToLookup(r => new Spot(r.Content.Location, r.Content.RemovalDate));
        var installations = records.Installations.ToLookup(i => new Spot(i.Content.Location, i.Content.InstallationDate));
        return
        [
            .. examined.Select(g => g.Key)
                .Concat(findings.Select(g => g.Key))
                .Concat(actions.Select(g => g.Key))
                .Concat(removals.Select(g => g.Key))
                .Concat(installations.Select(g => g.Key))
                .Distinct()
                .GroupBy(s => s.Location, StringComparer.Ordinal)
                .OrderBy(g => g.Key, StringComparer.Ordinal)
                .Select(g => new LocationTimeline(
                    g.Key, records.Description.Kind(g.Key, g.First().Date)!, [.. g.OrderBy(s => s.Date).Select(Day)])),
        ];

        LocationDay Day(Spot spot) => new()
        {
            Date = spot.Date,
            Hours = hours.OfVisit(spot.Date),
            Look = LookAt([.. examined[spot]], [.. findings[spot]]),
            Actions = [.. actions[spot]],
            Removals = [.. removals[spot]],
            Renewal = RenewalAt([.. installations[spot]], [.. actions[spot]], carried),
        };
    }

    private static Look? LookAt(List<RecordKey> examined, List<Recorded<Finding>> findings) =>
        examined.Count == 0 && findings.Count == 0
            ? null
            : new Look([.. findings.Where(f => f.Content.Grade == FindingGrade.Defect)], [.. examined, .. findings.Select(f => f.Key)])
            {
                IsExamined = examined.Count > 0,
                Accepted = findings.Where(f => f.Content.Grade == FindingGrade.Accepted).Select(f => f.Content.Condition).ToHashSet(),
            };

    /// <remarks>Several installations of one day are one, told twice: the one that knows the hours on the part holds.</remarks>
    private static Renewal? RenewalAt(
        List<Recorded<Installation>> installations, List<Recorded<CorrectiveAction>> actions, IReadOnlyDictionary<RecordKey, CarriedHours> carried)
    {
        var replaced = actions.Where(a => ActionEffect.Renews(a.Content.Kind)).ToList();
        if (installations.Count == 0 && replaced.Count == 0)
            return null;
        if (installations.Count == 0)
            return new Renewal(IsInstallation: false, replaced[0].Content.PartHours ?? Hours.Zero, SerialNumber: null, [.. replaced.Select(r => r.Key)]);

        var told = installations.Find(i => i.Content.PartHours is not null) ?? installations.Find(i => carried.ContainsKey(i.Key)) ?? installations[0];
        var carriedHours = told.Content.PartHours is null ? carried.GetValueOrDefault(told.Key) : null;
        return new Renewal(
            IsInstallation: true,
            told.Content.PartHours ?? carriedHours?.Hours,
            told.Content.SerialNumber ?? installations.Find(i => i.Content.SerialNumber is not null)?.Content.SerialNumber,
            [.. installations.Select(i => i.Key), .. replaced.Select(r => r.Key), .. carriedHours is null ? [] : new[] { carriedHours.From }]);
    }

    private readonly record struct Spot(string Location, DateOnly Date);
}

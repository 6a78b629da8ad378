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
    private static readonly IReadOnlySet<Condition> NothingAccepted = new HashSet<Condition>();

    /// <summary>A timeline for every location with at least one look, action or change of parts, ordered by path.</summary>
    public static IReadOnlyList<LocationTimeline> Build(
        AircraftRecords records, AircraftHours hours, IReadOnlyDictionary<RecordKey, CarriedHours> carried)
    {
        // A merged finding is the look of the one that stands, told again; so is its source's inspection of that place on that day.
        var lookOf = records.Merges.ToDictionary(m => m.Merged.Key, m => m.Kept.Content.FoundDate);
        var retold = records.Merges
            .GroupBy(m => (m.Merged.Key.Source, m.Merged.Content.Location, m.Merged.Content.FoundDate))
            .ToDictionary(g => g.Key, g => g.First().Kept.Content.FoundDate);
        // There are millions of lines of cards, and all of one card say the same of their places: they share its day.
        var places = new Dictionary<string, PlaceDays>(StringComparer.Ordinal);
        foreach (var inspection in records.Inspections)
        {
            var date = inspection.Content.InspectionDate;
            var alone = new LocationDay
            {
                Date = date,
                Hours = hours.OfVisit(date),
                Look = LookAt([inspection.Key], []),
                Actions = [],
                Removals = [],
                Renewal = null,
            };
            foreach (var look in inspection.Content.Looks)
            {
                if (look.State != LookState.Examined)
                    continue;
                if (retold.Count > 0 && retold.TryGetValue((inspection.Key.Source, look.Location, date), out var told))
                    At(look.Location, told).Examined.Add(inspection.Key);
                else
                    Days(look.Location).Examine(alone);
            }
        }

        foreach (var finding in records.Findings)
            At(finding.Content.Location, lookOf.GetValueOrDefault(finding.Key, finding.Content.FoundDate)).Findings.Add(finding);
        foreach (var action in records.Actions)
            At(action.Content.Location, action.Content.ActionDate).Actions.Add(action);
        foreach (var removal in records.Removals)
            At(removal.Content.Location, removal.Content.RemovalDate).Removals.Add(removal);
        foreach (var installation in records.Installations)
            At(installation.Content.Location, installation.Content.InstallationDate).Installations.Add(installation);
        return
        [
            .. places
                .OrderBy(p => p.Key, StringComparer.Ordinal)
                .Select(p => new LocationTimeline(p.Key, records.Description.Kind(p.Key, p.Value.FirstTold)!, p.Value.Build(Day))),
        ];

        PlaceDays Days(string location)
        {
            if (!places.TryGetValue(location, out var days))
                places.Add(location, days = new PlaceDays());
            return days;
        }

        Spot At(string location, DateOnly date) => Days(location).At(date);

        LocationDay Day(DateOnly date, Spot spot) => new()
        {
            Date = date,
            Hours = hours.OfVisit(date),
            Look = LookAt(spot.Examined, spot.FindingsOrNone),
            Actions = spot.ActionsOrNone,
            Removals = spot.RemovalsOrNone,
            Renewal = RenewalAt(spot.InstallationsOrNone, spot.ActionsOrNone, carried),
        };
    }

    private static Look? LookAt(List<RecordKey> examined, List<Recorded<Finding>> findings) =>
        findings.Count == 0
            ? examined.Count == 0 ? null : new Look([], examined) { IsExamined = true, Accepted = NothingAccepted }
            : new Look([.. findings.Where(f => f.Content.Grade == FindingGrade.Defect)], [.. examined, .. findings.Select(f => f.Key)])
            {
                IsExamined = examined.Count > 0,
                Accepted = findings.Where(f => f.Content.Grade == FindingGrade.Accepted).Select(f => f.Content.Condition).ToHashSet(),
            };

    /// <remarks>Several installations of one day are one, told twice: the one that knows the hours on the part holds.</remarks>
    private static Renewal? RenewalAt(
        List<Recorded<Installation>> installations, List<Recorded<CorrectiveAction>> actions, IReadOnlyDictionary<RecordKey, CarriedHours> carried)
    {
        if (installations.Count == 0 && actions.Count == 0)
            return null;
        var replaced = actions.Where(a => ActionEffect.Renews(a.Content.Kind)).ToList();
        if (installations.Count == 0 && replaced.Count == 0)
            return null;
        if (installations.Count == 0)
        {
            return new Renewal(
                IsInstallation: false, replaced[0].Content.PartHours ?? Hours.Zero, SerialNumber: null, PartNumber: null, [.. replaced.Select(r => r.Key)]);
        }

        var told = installations.Find(i => i.Content.PartHours is not null) ?? installations.Find(i => carried.ContainsKey(i.Key)) ?? installations[0];
        var carriedHours = told.Content.PartHours is null ? carried.GetValueOrDefault(told.Key) : null;
        return new Renewal(
            IsInstallation: true,
            told.Content.PartHours ?? carriedHours?.Hours,
            told.Content.SerialNumber ?? installations.Find(i => i.Content.SerialNumber is not null)?.Content.SerialNumber,
            told.Content.PartNumber ?? installations.Find(i => i.Content.PartNumber is not null)?.Content.PartNumber,
            [.. installations.Select(i => i.Key), .. replaced.Select(r => r.Key), .. carriedHours is null ? [] : new[] { carriedHours.From }]);
    }
}

using FleetTrend.Observations;
using FleetTrend.Observations.Exposures;
using FleetTrend.Observations.Lives;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records.Sources;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Api.Trends;

/// <summary>The rows behind a number, as the contract writes them.</summary>
internal static class EvidenceMessages
{
    /// <summary>The rows that a request asks for: exposures, then events, then lives.</summary>
    public static IEnumerable<Wire.EvidenceRow> Rows(IReadOnlyList<AircraftObservations> aircraft, Wire.ListEvidenceRequest request)
    {
        bool Wanted(string typeGroup, string location, string kind) =>
            (request.TypeGroup.Length == 0 || request.TypeGroup == typeGroup)
            && (request.Location.Length == 0 || request.Location == location)
            && (request.Kind.Length == 0 || request.Kind == kind);

        var watched = aircraft.SelectMany(a => a.Exposures).ToLookup(e => (e.Registration, e.Location, e.TypeGroup));
        var exposures = aircraft.SelectMany(a => a.Exposures)
            .Where(e => Wanted(e.TypeGroup, e.Location, e.Kind.Name)).Select(ToWire);
        var events = aircraft.SelectMany(a => a.Events)
            .Where(e => Wanted(e.TypeGroup, e.Location, e.Kind.Name)
                && (request.Condition == Wire.Condition.Unspecified || (int)request.Condition == (int)e.Condition))
            .Select(e => ToWire(e, IsWatched(e)));
        var lives = aircraft.SelectMany(a => a.Lives)
            .Where(l => Wanted(l.TypeGroup, l.Location, l.Kind.Name)).Select(ToWire);
        return exposures.Concat(events).Concat(lives);

        // As the rates count it: found within hours watched there in its type group.
        bool IsWatched(LocationEvent e) =>
            watched[(e.Registration, e.Location, e.TypeGroup)].Any(x => x.From < e.Found && e.Found <= x.To);
    }

    private static Wire.EvidenceRow ToWire(LocationExposure exposure) => new()
    {
        Registration = exposure.Registration,
        Location = exposure.Location,
        Kind = exposure.Kind.Name,
        RecordKeys = { exposure.Evidence.Select(ToWire) },
        Exposure = new Wire.ExposureRow
        {
            FromHours = exposure.From.Value,
            ToHours = exposure.To.Value,
            LookCount = exposure.LookCount,
        },
    };

    private static Wire.EvidenceRow ToWire(LocationEvent found, bool isWatched)
    {
        var row = new Wire.EventRow
        {
            Condition = (Wire.Condition)found.Condition,
            FoundHours = found.Found.Value,
            FoundDate = found.FoundDate.ToWire(),
            PresentAtEntry = found.PresentAtEntry,
            Ordinal = found.Ordinal,
            NotWatched = !found.PresentAtEntry && !isWatched,
            Actions = { found.Actions.Select(ToWire) },
            ClosedDate = found.ClosedDate.ToWire(),
        };
        if (found.LastGood is { } lastGood)
            row.LastGoodHours = lastGood.Value;
        return new Wire.EvidenceRow
        {
            Registration = found.Registration,
            Location = found.Location,
            Kind = found.Kind.Name,
            RecordKeys = { found.Evidence.Select(ToWire) },
            Event = row,
        };
    }

    private static Wire.EventAction ToWire(EventAction action) => new()
    {
        Kind = (Wire.ActionKind)action.Kind,
        ActionDate = action.Date.ToWire(),
        TimeInServiceHours = action.At.Value,
    };

    private static Wire.EvidenceRow ToWire(ObservedLife life)
    {
        var row = new Wire.LifeRow
        {
            PartNumber = life.PartNumber ?? "",
            Exclusion = life.Exclusion switch
            {
                null => "",
                LifeExclusion.AgeUnknown => "its age is not known",
                LifeExclusion.FailedBeforeEntry => "it had failed before observation began",
                LifeExclusion.NeverExamined => "it was never examined",
                LifeExclusion.NoHours => "it had flown no hours under observation before it was found failed",
                _ => throw new ArgumentOutOfRangeException(nameof(life), life.Exclusion, "Not an exclusion."),
            },
        };
        if (life.Exclusion != LifeExclusion.AgeUnknown)
            (row.EntryHours, row.LastGoodHours) = (life.Entry.Value, life.LastGood.Value);
        if (life.FirstBad is { } firstBad)
            row.FirstBadHours = firstBad.Value;
        return new Wire.EvidenceRow
        {
            Registration = life.Registration,
            Location = life.Location,
            Kind = life.Kind.Name,
            RecordKeys = { life.Evidence.Select(ToWire) },
            Life = row,
        };
    }

    public static Wire.RecordKey ToWire(RecordKey key) =>
        new() { Source = key.Source, SourceRecordId = key.SourceRecordId, Revision = key.Revision };
}

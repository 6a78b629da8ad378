using FleetTrend.Observations;
using FleetTrend.Observations.Looks;
using FleetTrend.Observations.Recurrences;
using FleetTrend.Records;
using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.OpenFindings;

/// <summary>What is open now on the aircraft that fly. It counts and compares nothing: each open finding is listed.</summary>
public sealed class OpenFindingAnalysis : Analysis<OpenFinding>
{
    /// <summary>Makes the analysis.</summary>
    public OpenFindingAnalysis()
        : base("open-findings")
    {
    }

    /// <inheritdoc/>
    public override Subject SubjectOf(OpenFinding item) => new(item.Registration, item.Location, item.Kind, item.Base);

    /// <summary>Leaks, then missing pieces, then the others; of each, the longest open first.</summary>
    public override IEnumerable<OpenFinding> Order(IEnumerable<OpenFinding> items) => items
        .OrderBy(f => f.Condition switch { Condition.LeakTrace => 0, Condition.MissingPiece => 1, _ => 2 })
        .ThenByDescending(f => f.HoursSinceFound)
        .ThenBy(f => f.FoundDate)
        .ThenBy(f => f.Registration, StringComparer.Ordinal)
        .ThenBy(f => f.Location, StringComparer.Ordinal)
        .ThenBy(f => f.Condition)
        .ThenBy(f => f.Evidence[0].SourceRecordId, StringComparer.Ordinal);

    /// <inheritdoc/>
    protected override IEnumerable<OpenFinding> Find(TypeGroupInputs inputs, ICollection<double> tests) =>
        inputs.Present.Where(a => a.RetiredDate is null).SelectMany(OpenOn);

    private IEnumerable<OpenFinding> OpenOn(AircraftObservations aircraft)
    {
        List<LocationEvent> open = [.. aircraft.Events.Where(e => e.ClosedDate is null)];
        if (open.Count == 0)
            return [];
        var looks = aircraft.Looks.ToDictionary(l => l.Location, StringComparer.Ordinal);
        return Order(open.Select(e => Describe(aircraft, e, looks.GetValueOrDefault(e.Location))))
            .GroupBy(f => f.Location, StringComparer.Ordinal)
            .SelectMany(g => g);
    }

    private static OpenFinding Describe(AircraftObservations aircraft, LocationEvent found, LocationLooks? looks)
    {
        var isLookedAtSince = looks?.LastDate > found.FoundDate;
        var lastLook = isLookedAtSince ? looks!.LastDate!.Value : found.FoundDate;
        var (action, sizes) = (found.Actions.Count > 0 ? found.Actions[^1] : null, found.Sizes);
        return new OpenFinding
        {
            Registration = aircraft.Registration,
            Base = aircraft.Base,
            TypeGroup = aircraft.TypeGroup,
            Location = found.Location,
            Kind = found.Kind.Name,
            JascCode = found.Kind.JascCode,
            Condition = found.Condition,
            FoundDate = found.FoundDate,
            FoundHours = found.Found.Value,
            PresentAtEntry = found.PresentAtEntry,
            HoursSinceFound = Since(found.Found),
            LastLookDate = lastLook,
            HoursSinceLook = Since(isLookedAtSince ? aircraft.Hours.On(lastLook) ?? found.Found : found.Found),
            LeftBy = action?.Kind,
            LeftDate = action?.Date,
            FirstMillimetres = sizes.Count > 0 ? sizes[0].Millimetres : null,
            LastMillimetres = sizes.Count > 0 ? sizes[^1].Millimetres : null,
            GrowthHours = sizes.Count > 1 ? (sizes[^1].At - sizes[0].At).Value : null,
            Evidence = [.. found.Evidence.Concat(isLookedAtSince ? looks!.Evidence : []).Distinct()],
        };

        double Since(Hours hours) => aircraft.Latest is { } latest ? Math.Max(0, (latest.Hours - hours).Value) : 0;
    }
}

using FleetTrend.Observations;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;

namespace FleetTrend.Trends.Shrouds;

/// <summary>A heat shroud with stop-drilled cracks, from its first stop drill until it was renewed.</summary>
public sealed record StopDrilledShroud
{
    /// <summary>The aircraft.</summary>
    public required string Registration { get; init; }

    /// <summary>Its present base.</summary>
    public required string Base { get; init; }

    /// <summary>The shroud: the path of its edges without their last part.</summary>
    public required string Shroud { get; init; }

    /// <summary>Cracks that were stop-drilled, each once.</summary>
    public required int StopDrills { get; init; }

    /// <summary>Cracks open there now; zero where it was renewed.</summary>
    public required int OpenCracks { get; init; }

    /// <summary>The day of the first stop drill.</summary>
    public required DateOnly FirstDate { get; init; }

    /// <summary>Flight hours from the first stop drill to the renewal, or until now.</summary>
    public required double Hours { get; init; }

    /// <summary>Whether it was renewed.</summary>
    public required bool IsRenewed { get; init; }

    /// <summary>The findings and actions.</summary>
    public required IReadOnlyList<RecordKey> Evidence { get; init; }

    /// <summary>All of an aircraft in a type group. A replacement at one edge renews the shroud: it is one sheet.</summary>
    internal static IEnumerable<StopDrilledShroud> Find(AircraftObservations aircraft, string typeGroup) => aircraft.Events
        .Where(e => e.Kind.Name == ShippedKinds.ShroudEdge && e.TypeGroup == typeGroup)
        .GroupBy(e => e.Location[..Math.Max(0, e.Location.LastIndexOf('/'))], StringComparer.Ordinal)
        .OrderBy(g => g.Key, StringComparer.Ordinal)
        .SelectMany(shroud =>
        {
            List<Hours> renewals = [.. shroud.Select(e => e.RenewedAt).Concat(shroud.Select(e => e.NextRenewedAt)).OfType<Hours>().Distinct().Order()];
            return shroud
                .Select(e => (Event: e, Drill: e.Actions.FirstOrDefault(a => a.Kind == ActionKind.StopDrilled)))
                .Where(d => d.Drill is not null)
                .GroupBy(d => renewals.FindIndex(r => r > d.Drill!.At))
                .Select(sheet =>
                {
                    var first = sheet.MinBy(d => d.Drill!.At).Drill!;
                    Hours? renewed = sheet.Key < 0 ? null : renewals[sheet.Key];
                    var end = renewed ?? (aircraft.Latest is { } latest && latest.Hours > first.At ? latest.Hours : first.At);
                    return new StopDrilledShroud
                    {
                        Registration = aircraft.Registration,
                        Base = aircraft.Base,
                        Shroud = shroud.Key,
                        StopDrills = sheet.Count(),
                        OpenCracks = renewed is null ? shroud.Count(e => e is { ClosedDate: null, Condition: Condition.Crack }) : 0,
                        FirstDate = first.Date,
                        Hours = (end - first.At).Value,
                        IsRenewed = renewed is not null,
                        Evidence = [.. sheet.SelectMany(d => d.Event.Evidence).Distinct()],
                    };
                });
        });
}

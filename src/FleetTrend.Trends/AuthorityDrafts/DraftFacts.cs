using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Observations.Recurrences;

namespace FleetTrend.Trends.AuthorityDrafts;

/// <summary>What a draft is written from.</summary>
/// <param name="Aircraft">The aircraft.</param>
/// <param name="Found">The finding.</param>
/// <param name="Part">The part that was there; null where none is recorded.</param>
/// <param name="JascCode">JASC code of the location; null where it has none.</param>
/// <param name="TypeGroup">The type group, as people call it.</param>
/// <param name="AsOf">The moment.</param>
internal sealed record DraftFacts(
    AircraftObservations Aircraft, LocationEvent Found, ObservedLife? Part, string? JascCode, string TypeGroup, DateTimeOffset AsOf)
{
    /// <summary>Hours on the part when it was found; null where they are not known.</summary>
    public double? PartHours =>
        Part is { Exclusion: not LifeExclusion.AgeUnknown } part && Aircraft.Hours.On(part.StartDate) is { } start && Found.Found >= start
        ? (part.Entry + (Found.Found - start)).Value
        : null;
}

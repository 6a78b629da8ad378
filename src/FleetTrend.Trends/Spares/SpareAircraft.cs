using FleetTrend.Observations;
using FleetTrend.Observations.Lives;

namespace FleetTrend.Trends.Spares;

/// <summary>Parts of one number on one aircraft.</summary>
/// <param name="Aircraft">The aircraft.</param>
/// <param name="Lives">Those in service.</param>
internal sealed record SpareAircraft(AircraftObservations Aircraft, IReadOnlyList<ObservedLife> Lives);

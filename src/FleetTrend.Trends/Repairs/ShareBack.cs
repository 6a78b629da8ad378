namespace FleetTrend.Trends.Repairs;

/// <summary>How many repairs had come back by some flight hours.</summary>
/// <param name="Hours">Flight hours since the action.</param>
/// <param name="Known">Repairs known to have come back by then: found again at a look not later.</param>
/// <param name="Held">Repairs known to have held so long: looked at then or later, and not found before.</param>
/// <param name="Share">Share that has come back by then, with what lies between looks and beyond the last one estimated.</param>
public sealed record ShareBack(double Hours, int Known, int Held, Figure Share);

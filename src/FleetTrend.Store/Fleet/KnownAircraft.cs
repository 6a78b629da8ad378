using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Layouts;

namespace FleetTrend.Store.Fleet;

/// <summary>What the rules of intake need to know of a registered aircraft.</summary>
/// <param name="Registration">Registration mark.</param>
/// <param name="Assignments">Its assignments by date, of all sources that describe it.</param>
/// <param name="Locations">Every location of every layout that its type groups have, by path.</param>
/// <param name="LocationsEver">The same, with the type groups that only superseded or retracted records gave it.</param>
public sealed record KnownAircraft(
    string Registration,
    IReadOnlyList<Assignment> Assignments,
    IReadOnlyDictionary<string, Location> Locations,
    IReadOnlyDictionary<string, Location> LocationsEver);

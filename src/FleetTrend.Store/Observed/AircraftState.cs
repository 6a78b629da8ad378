namespace FleetTrend.Store.Observed;

/// <summary>What a refresh has to know of an aircraft before it reads its records.</summary>
/// <param name="AircraftId">Identifier.</param>
/// <param name="Registration">Registration mark.</param>
/// <param name="TypeGroups">Every type group in which any of its records places it.</param>
/// <param name="SharesSerialNumbersWith">Aircraft whose records name a serial number that its own name: parts may have gone between them.</param>
/// <param name="IsKept">Whether its kept observations hold at the moment.</param>
/// <param name="HasChanged">Whether anything about it came in since the moment that was published before.</param>
public sealed record AircraftState(
    int AircraftId, string Registration, IReadOnlyList<string> TypeGroups, IReadOnlyList<int> SharesSerialNumbersWith, bool IsKept, bool HasChanged);

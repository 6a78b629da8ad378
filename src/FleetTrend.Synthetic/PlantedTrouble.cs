using FleetTrend.Contracts.V1;

namespace FleetTrend.Synthetic;

/// <summary>Trouble put into a synthetic fleet on purpose, and the flag that should find it.</summary>
/// <param name="Description">One sentence, for people.</param>
/// <param name="Kind">Kind of flag that should be raised.</param>
/// <param name="Registration">The aircraft; empty where it is a base.</param>
/// <param name="Base">The base.</param>
/// <param name="Location">Path of the location; empty where it is a kind of part.</param>
/// <param name="PartKind">Kind of part; empty where it is a location.</param>
public sealed record PlantedTrouble(
    string Description, FlagKind Kind, string Registration, string Base, string Location, string PartKind)
{
    /// <summary>True where a flag is about this trouble.</summary>
    public bool IsFoundBy(Flag flag)
    {
        ArgumentNullException.ThrowIfNull(flag);
        return Kind == FlagKind.BasePartLife
            ? flag.Kind == Kind && flag.Base == Base && flag.PartKind == PartKind
            : flag.Kind is FlagKind.AirframeDrift or FlagKind.RepeatLocation
                && flag.Registration == Registration
                && flag.Locations.Contains(Location);
    }
}

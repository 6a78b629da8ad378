using FleetTrend.Records.Aircraft;

namespace FleetTrend.Intake;

/// <summary>Aircraft that were checked and not stored: they count as registered for what is checked after them.</summary>
public sealed class CheckedAircraft
{
    /// <summary>Most aircraft kept; later ones do not count as registered.</summary>
    public const int Most = 10_000;

    private readonly List<Airframe> airframes = [];

    /// <summary>What was checked, in its order.</summary>
    internal IReadOnlyList<Airframe> Airframes => airframes;

    internal void Add(Airframe airframe)
    {
        if (airframes.Count < Most)
            airframes.Add(airframe);
    }
}

using FleetTrend.Records;
using FleetTrend.Records.Layouts;

namespace FleetTrend.Observations;

/// <summary>Turns the stored records of an aircraft into what statistics need: the one place where raw records are read for numbers.</summary>
public static class Observe
{
    /// <summary>Observations of one aircraft as of a day.</summary>
    /// <param name="history">Its records as known at the as-of moment.</param>
    /// <param name="layouts">Layouts by type group name; a type group that is missing has no locations.</param>
    /// <param name="asOf">The as-of day (UTC); records dated after it are listed as problems and left out.</param>
    public static AircraftObservations History(AircraftHistory history, IReadOnlyDictionary<string, Layout> layouts, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(history);
        ArgumentNullException.ThrowIfNull(layouts);
        return new AircraftObservations
        {
            Registration = history.Registration,
            Base = history.Airframes[0].Content.Assignments[^1].Base,
            TypeGroup = history.Airframes[0].Content.Assignments[^1].TypeGroup,
            Exposures = [],
            Events = [],
            Lives = [],
            Problems = [],
        };
    }
}

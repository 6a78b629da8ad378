using FleetTrend.Observations;
using FleetTrend.Observations.Lives;

namespace FleetTrend.Trends.Spares;

/// <summary>The parts of one number, or of one kind where no number is known, on the aircraft of one base.</summary>
/// <param name="Kind">Name of the kind.</param>
/// <param name="Title">Its title.</param>
/// <param name="Base">The base where the aircraft are now.</param>
/// <param name="PartNumber">The part number; null where none is known.</param>
/// <param name="Aircraft">The aircraft with such parts in service.</param>
/// <param name="Waiting">Parts that were found failed and wait for a replacement.</param>
internal sealed record SparePlace(string Kind, string Title, string Base, string? PartNumber, IReadOnlyList<SpareAircraft> Aircraft, int Waiting)
{
    /// <summary>Parts in service.</summary>
    public int InService => Aircraft.Sum(a => a.Lives.Count);

    /// <summary>All of a type group, by kind, base and part number.</summary>
    public static IEnumerable<SparePlace> Find(TypeGroupInputs inputs)
    {
        var places = new SortedDictionary<
            (string Kind, string Base, string PartNumber), (string Title, List<SpareAircraft> Aircraft, int Waiting)>(Comparer.Instance);
        foreach (var aircraft in inputs.Present.Where(a => a.RetiredDate is null))
        {
            foreach (var alike in Newest(aircraft).GroupBy(l => (l.Kind.Name, aircraft.Base, l.PartNumber ?? "")))
            {
                List<ObservedLife> lives = [.. alike.Where(l => l.Ending == LifeEnding.InService)];
                var waiting = alike.Count(l => l.Ending == LifeEnding.Failed && PartsPerFailure.IsOpen(aircraft, l));
                if (lives.Count + waiting == 0)
                    continue;
                if (!places.TryGetValue(alike.Key, out var place))
                    place = (alike.First().Kind.Title, [], 0);
                if (lives.Count > 0)
                    place.Aircraft.Add(new SpareAircraft(aircraft, lives));
                places[alike.Key] = (place.Title, place.Aircraft, place.Waiting + waiting);
            }
        }

        return places.Select(p => new SparePlace(
            p.Key.Kind, p.Value.Title, p.Key.Base, p.Key.PartNumber.Length == 0 ? null : p.Key.PartNumber, p.Value.Aircraft, p.Value.Waiting));
    }

    /// <summary>The newest life of each location.</summary>
    public static IEnumerable<ObservedLife> Newest(AircraftObservations aircraft) => aircraft.Lives
        .GroupBy(l => l.Location, StringComparer.Ordinal)
        .Select(g => g.OrderBy(l => l.StartDate).ThenBy(l => l.Ending == LifeEnding.InService).Last());

    private sealed class Comparer : IComparer<(string, string, string)>
    {
        public static readonly Comparer Instance = new();

        public int Compare((string, string, string) x, (string, string, string) y) =>
            string.CompareOrdinal(x.Item1, y.Item1) is not 0 and var byKind ? byKind
            : string.CompareOrdinal(x.Item2, y.Item2) is not 0 and var byBase ? byBase
            : string.CompareOrdinal(x.Item3, y.Item3);
    }
}

namespace FleetTrend.Statistics.Changes;

/// <summary>A part of a unit that may change by itself: the whole, a sub-assembly, one location.</summary>
/// <param name="Name">Name by which a result is read.</param>
/// <param name="Locations">Indices of its locations, ascending; empty for the whole unit.</param>
/// <param name="Weight">Prior weight; those of a panel add up to one.</param>
public sealed record ChangeScope(string Name, IReadOnlyList<int> Locations, double Weight)
{
    /// <summary>Whether it is the whole unit.</summary>
    public bool IsWhole => Locations.Count == 0;

    /// <summary>
    /// Scopes with half of the weight on the whole unit, a quarter spread over the sub-assemblies and a quarter over the locations; what has no
    /// scope of its own leaves its share to the others.
    /// </summary>
    /// <param name="whole">Name of the whole unit.</param>
    /// <param name="locations">Names of the locations, in the order of their indices.</param>
    /// <param name="subAssemblies">Sub-assemblies: name and indices. One with fewer than two locations, or with all, is no scope of its own.</param>
    public static IReadOnlyList<ChangeScope> Spread(
        string whole, IReadOnlyList<string> locations, IReadOnlyList<(string Name, IReadOnlyList<int> Locations)> subAssemblies)
    {
        var parts = subAssemblies.Where(s => s.Locations.Count > 1 && s.Locations.Count < locations.Count).ToList();
        var places = locations.Count > 1 ? locations : [];
        var (partWeight, placeWeight) = (parts.Count > 0 ? 0.25 : 0, places.Count > 0 ? 0.25 : 0);
        var total = 0.5 + partWeight + placeWeight;
        return
        [
            new ChangeScope(whole, [], 0.5 / total),
            .. parts.Select(s => new ChangeScope(s.Name, [.. s.Locations.Order()], partWeight / parts.Count / total)),
            .. places.Select((name, index) => new ChangeScope(name, [index], placeWeight / places.Count / total)),
        ];
    }
}

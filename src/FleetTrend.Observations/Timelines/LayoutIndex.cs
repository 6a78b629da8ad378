using FleetTrend.Records.Layouts;

namespace FleetTrend.Observations.Timelines;

/// <summary>Which locations a type group has, and of which kind each is.</summary>
internal sealed class LayoutIndex
{
    private readonly Dictionary<string, Dictionary<string, LocationKind>> kinds;

    public LayoutIndex(IReadOnlyDictionary<string, Layout> layouts) =>
        kinds = layouts.ToDictionary(
            l => l.Key,
            l => l.Value.Locations.ToDictionary(p => p.Path, p => p.Kind, StringComparer.Ordinal),
            StringComparer.Ordinal);

    /// <summary>Kind of the location in that type group's layout, or null where the layout does not have it.</summary>
    public LocationKind? Kind(string typeGroup, string location) =>
        kinds.GetValueOrDefault(typeGroup)?.GetValueOrDefault(location);

    /// <summary>The locations of a type group with their kinds, in no order; none where it has no layout.</summary>
    public IEnumerable<(string Path, LocationKind Kind)> Locations(string typeGroup) =>
        kinds.GetValueOrDefault(typeGroup)?.Select(l => (l.Key, l.Value)) ?? [];
}

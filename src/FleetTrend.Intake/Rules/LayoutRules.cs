using FleetTrend.Records.Layouts;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of layouts and type groups.</summary>
public static class LayoutRules
{
    private const int MaxLocations = 500;
    private const int MaxTitleLength = 120;
    private const int MaxLookForLength = 400;

    /// <summary>A layout, or every rule that it breaks.</summary>
    /// <param name="layout">As sent; null is read as empty.</param>
    /// <param name="refusals">Every broken rule; the layout counts only where this is empty.</param>
    public static Layout Parse(Wire.Layout? layout, out IReadOnlyList<Refusal> refusals)
    {
        layout ??= new Wire.Layout();
        var root = new FieldReader(default);
        var reader = root.At("layout");
        refusals = root.Refusals;
        return new Layout(
            reader.Name("name", layout.Name, Patterns.Name, Patterns.NameRule),
            reader.Line("title", layout.Title, 0, MaxTitleLength),
            ReadLocations(layout, reader));
    }

    /// <summary>A type group, or every rule that it breaks.</summary>
    /// <param name="group">As sent; null is read as empty.</param>
    /// <param name="refusals">Every broken rule; the type group counts only where this is empty.</param>
    public static TypeGroup Parse(Wire.TypeGroup? group, out IReadOnlyList<Refusal> refusals)
    {
        group ??= new Wire.TypeGroup();
        var root = new FieldReader(default);
        var reader = root.At("type_group");
        refusals = root.Refusals;
        return new TypeGroup(
            reader.Name("name", group.Name, Patterns.Name, Patterns.NameRule),
            reader.Line("title", group.Title, 0, MaxTitleLength),
            reader.Name("layout", group.Layout, Patterns.Name, Patterns.NameRule));
    }

    private static List<Location> ReadLocations(Wire.Layout layout, FieldReader reader)
    {
        const string Count = "must be a list of 1 to 500 locations";
        if (layout.Locations.Count == 0)
            reader.Refuse("locations", "", Reasons.FieldRequired, Count);
        if (layout.Locations.Count > MaxLocations)
        {
            reader.RefuseBare("locations", $"{layout.Locations.Count}", Reasons.TooManyItems, Count);
            return [];
        }

        var locations = new List<Location>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (index, wire) in layout.Locations.Index())
        {
            var line = reader.At($"locations[{index}]");
            var path = line.Name("path", wire.Path, Patterns.Path, Patterns.PathRule);
            if (!seen.Add(path))
                line.Refuse("path", path, Reasons.DuplicateLine, "must be a path that no other line has");
            if (wire.Kind.Length == 0)
                line.Refuse("kind", "", Reasons.FieldRequired, "must be the name of a location kind");
            else if (LocationKinds.Find(wire.Kind) is null)
                line.Refuse("kind", wire.Kind, Reasons.LocationKindUnknown, "must be the name of a location kind", NearestName.Of(wire.Kind, LocationKinds.All.Select(k => k.Name)));
            if (wire.JascCode.Length > 0)
                line.Name("jasc_code", wire.JascCode, Patterns.Jasc, Patterns.JascRule);
            locations.Add(new Location(
                path, wire.Kind, line.Line("look_for", wire.LookFor, 0, MaxLookForLength), wire.JascCode.Length == 0 ? null : wire.JascCode));
        }

        return locations;
    }
}

using FleetTrend.Records.Layouts;
using FleetTrend.Records.Practices;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of practice changes.</summary>
internal static class PracticeRules
{
    private const int MaxLocations = 500;
    private const int MaxPartNumberLength = 120;
    private const int MaxWhatLength = 200;
    private const int MaxWhyLength = 2_000;

    public static PracticeChange Parse(Wire.PracticeChange change, FieldReader reader, ReferenceData known)
    {
        var group = ReadTypeGroup(change.TypeGroup, reader, known);
        return new PracticeChange
        {
            ChangeDate = reader.Day("change_date", change.ChangeDate),
            Base = change.Base.Length == 0 ? null : BaseRules.ReadKnown(change.Base, reader, known),
            TypeGroup = group,
            Locations = ReadLocations(change, group, reader, known),
            PartNumber = NullWhereEmpty(reader.Line("part_number", change.PartNumber, 0, MaxPartNumberLength)),
            What = reader.Line("what", change.What, 1, MaxWhatLength),
            Why = reader.Note("why", change.Why, MaxWhyLength),
        };
    }

    private static string? ReadTypeGroup(string value, FieldReader reader, ReferenceData known)
    {
        if (value.Length == 0)
            return null;
        reader.Name("type_group", value, Patterns.Name, Patterns.NameRule);
        if (Patterns.Name.IsMatch(value) && !known.TypeGroups.ContainsKey(value))
            reader.Refuse("type_group", value, Reasons.TypeGroupNotRegistered, "must be a registered type group", NearestName.Find(value, known.TypeGroups.Keys));
        return value;
    }

    private static List<string> ReadLocations(Wire.PracticeChange change, string? group, FieldReader reader, ReferenceData known)
    {
        if (change.Locations.Count > MaxLocations)
        {
            reader.RefuseBare("locations", $"{change.Locations.Count}", Reasons.TooManyItems, "must be a list of up to 500 lines");
            return [];
        }

        var layouts = Layouts(group, known);
        var paths = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var (index, wire) in change.Locations.Index())
        {
            var line = reader.At($"locations[{index}]");
            var path = line.Name("location", wire.Location, Patterns.Path, Patterns.PathRule);
            if (!Patterns.Path.IsMatch(path))
                continue;
            if (!paths.Add(path))
                line.Refuse("location", path, Reasons.DuplicateLine, "must be a location that no other line of the change has");
            else if (layouts.Count > 0 && !layouts.Any(layout => layout.ContainsKey(path)))
                line.Refuse("location", path, Reasons.LocationNotInLayout, Rule(group), NearestName.Find(path, layouts.SelectMany(layout => layout.Keys)));
        }

        return [.. paths];
    }

    /// <summary>Those that the locations must be of; none where the type group is refused already.</summary>
    private static IReadOnlyList<IReadOnlyDictionary<string, Location>> Layouts(string? group, ReferenceData known)
    {
        if (group is null)
            return [.. known.TypeGroups.Values];
        return known.TypeGroups.TryGetValue(group, out var own) ? [own] : [];
    }

    private static string Rule(string? group) =>
        group is null ? "must be a location of the layout of a type group" : $"must be a location of the layout of type group {group}";

    private static string? NullWhereEmpty(string text) => text.Length == 0 ? null : text;
}

using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using Google.Protobuf.Collections;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of location kinds, layouts and type groups.</summary>
public static class LayoutRules
{
    private const int MaxLocations = 500;
    private const int MaxTitleLength = 120;
    private const int MaxLineLength = 400;
    private const int MaxLines = 10;

    /// <summary>A kind of location, or null with every rule that it breaks.</summary>
    /// <param name="kind">As sent; null is read as empty.</param>
    /// <param name="refusals">Every broken rule.</param>
    public static LocationKind? Parse(Wire.LocationKind? kind, out IReadOnlyList<Refusal> refusals)
    {
        kind ??= new Wire.LocationKind();
        var root = new FieldReader(default);
        var reader = root.At("location_kind");
        refusals = root.Refusals;
        reader.Name("name", kind.Name, Patterns.Name, Patterns.NameRule);
        reader.Line("title", kind.Title, 1, MaxTitleLength);
        reader.Line("look_for", kind.LookFor, 0, MaxLineLength);
        if (kind.JascCode.Length > 0)
            reader.Name("jasc_code", kind.JascCode, Patterns.Jasc, Patterns.JascRule);
        var conditions = ReadConditions(reader, "conditions", kind.Conditions, null);
        if (kind.Conditions.Count == 0)
            reader.Refuse("conditions", "", Reasons.FieldRequired, "must be at least one condition, by enum name");
        var failures = ReadConditions(reader, "failure_conditions", kind.FailureConditions, conditions);
        var watched = ReadConditions(reader, "watched_conditions", kind.WatchedConditions, conditions);
        if (kind.HasLife && kind.FailureConditions.Count == 0)
            reader.Refuse("has_life", "true", Reasons.FieldNotAllowed, "must be left out: it follows from failure_conditions");
        var checkedFor = ReadConditions(reader, "checks", [.. kind.Checks.Select(c => c.Condition)], conditions, ".condition");
        foreach (var (index, checks) in kind.Checks.Index())
            ReadLines(reader.At($"checks[{index}]"), "lines", checks.Lines, isRequired: true);
        ReadLines(reader, "base_checks", kind.BaseChecks, isRequired: false);
        if (refusals.Count > 0)
            return null;
        return new LocationKind(
            kind.Name, kind.Title, kind.LookFor, kind.JascCode.Length == 0 ? null : kind.JascCode, conditions, failures, watched,
            [.. checkedFor.Zip(kind.Checks, (condition, checks) => new ConditionChecks(condition, [.. checks.Lines]))],
            [.. kind.BaseChecks]);
    }

    /// <summary>A layout, or every rule that it breaks.</summary>
    /// <param name="layout">As sent; null is read as empty.</param>
    /// <param name="kinds">Every kind of location, by name.</param>
    /// <param name="refusals">Every broken rule; the layout counts only where this is empty.</param>
    public static Layout Parse(Wire.Layout? layout, IReadOnlyDictionary<string, LocationKind> kinds, out IReadOnlyList<Refusal> refusals)
    {
        layout ??= new Wire.Layout();
        var root = new FieldReader(default);
        var reader = root.At("layout");
        refusals = root.Refusals;
        return new Layout(
            reader.Name("name", layout.Name, Patterns.Name, Patterns.NameRule),
            reader.Line("title", layout.Title, 0, MaxTitleLength),
            ReadLocations(layout, kinds, reader));
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

    private static List<Location> ReadLocations(
        Wire.Layout layout, IReadOnlyDictionary<string, LocationKind> kinds, FieldReader reader)
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
            var kind = kinds.GetValueOrDefault(wire.Kind);
            if (wire.Kind.Length == 0)
                line.Refuse("kind", "", Reasons.FieldRequired, "must be the name of a location kind");
            else if (kind is null)
                line.Refuse("kind", wire.Kind, Reasons.LocationKindUnknown, "must be the name of a location kind", NearestName.Find(wire.Kind, kinds.Keys));
            if (wire.JascCode.Length > 0)
                line.Name("jasc_code", wire.JascCode, Patterns.Jasc, Patterns.JascRule);
            var lookFor = line.Line("look_for", wire.LookFor, 0, MaxLineLength);
            if (kind is not null)
                locations.Add(new Location(path, kind, lookFor, wire.JascCode.Length == 0 ? null : wire.JascCode));
        }

        return locations;
    }

    /// <summary>Conditions by enum name, each once, and of <paramref name="among"/> where that is given.</summary>
    private static List<Condition> ReadConditions(
        FieldReader reader, string field, IReadOnlyList<string> names, List<Condition>? among, string suffix = "")
    {
        var read = new List<Condition>();
        foreach (var (index, name) in names.Index())
        {
            var path = $"{field}[{index}]{suffix}";
            var all = ContractWords.All<Wire.Condition>();
            if (ContractWords.Find<Wire.Condition>(name) is not { } known)
                reader.Refuse(path, name, name.Length == 0 ? Reasons.FieldRequired : Reasons.EnumUnknown, $"must be one of {string.Join(", ", all)}", NearestName.Find(name, all));
            else if (read.Contains((Condition)known))
                reader.Refuse(path, name, Reasons.DuplicateLine, "must be a condition that stands here once");
            else if (among?.Contains((Condition)known) == false)
                reader.Refuse(path, name, Reasons.ConditionNotAtKind, $"must be one of the kind's conditions: {string.Join(", ", among.Select(c => ContractWords.Write((Wire.Condition)c)))}");
            else
                read.Add((Condition)known);
        }

        return read;
    }

    private static void ReadLines(FieldReader reader, string field, RepeatedField<string> lines, bool isRequired)
    {
        if (lines.Count > MaxLines || (isRequired && lines.Count == 0))
        {
            reader.Refuse(
                field, lines.Count == 0 ? "" : $"{lines.Count}", lines.Count == 0 ? Reasons.FieldRequired : Reasons.TooManyItems,
                $"must be a list of {(isRequired ? "1 to" : "up to")} {MaxLines} lines");
        }

        foreach (var (index, line) in lines.Take(MaxLines).Index())
            reader.Line($"{field}[{index}]", line, 1, MaxLineLength);
    }
}

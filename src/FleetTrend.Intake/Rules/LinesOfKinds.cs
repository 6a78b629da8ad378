namespace FleetTrend.Intake.Rules;

/// <summary>Rules of a list whose lines each name a type group, a kind of location, or both, and no two the same.</summary>
internal sealed class LinesOfKinds(
    FieldReader reader, string field, string whatHoldsForAll, IReadOnlyCollection<string> typeGroups, IReadOnlyCollection<string> kinds)
{
    private const int Most = 500;

    private readonly HashSet<(string TypeGroup, string Kind)> seen = [];

    /// <summary>Whether there are not too many; too many are refused.</summary>
    public bool AreNotTooMany(int count)
    {
        if (count > Most)
            reader.RefuseBare(field, $"{count}", Reasons.TooManyItems, $"must be a list of up to {Most}");
        return count <= Most;
    }

    /// <summary>A line, with what it names checked.</summary>
    public FieldReader At(int index, string typeGroup, string kind)
    {
        var line = reader.At($"{field}[{index}]");
        CheckName(line, "type_group", typeGroup, typeGroups, Reasons.TypeGroupNotRegistered, "must be a registered type group, or empty for all");
        CheckName(line, "kind", kind, kinds, Reasons.LocationKindUnknown, "must be the name of a location kind, or empty for all");
        if (typeGroup.Length == 0 && kind.Length == 0)
            line.Refuse("type_group", "", Reasons.FieldRequired, $"must be given where kind is not: {whatHoldsForAll}");
        else if (!seen.Add((typeGroup, kind)))
            line.Refuse(kind.Length > 0 ? "kind" : "type_group", kind.Length > 0 ? kind : typeGroup, Reasons.DuplicateLine, "must be a type group and kind that no other line has");
        return line;
    }

    private static void CheckName(FieldReader line, string field, string name, IReadOnlyCollection<string> known, Reason unknown, string rule)
    {
        if (name.Length > 0 && !known.Contains(name, StringComparer.Ordinal))
            line.Refuse(field, name, unknown, rule, NearestName.Find(name, known));
    }
}

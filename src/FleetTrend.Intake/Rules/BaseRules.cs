namespace FleetTrend.Intake.Rules;

/// <summary>Rules of a base that a record names beside its aircraft.</summary>
internal static class BaseRules
{
    /// <summary>The base of a registered aircraft, spelled as its aircraft have it.</summary>
    public static string ReadKnown(string value, FieldReader reader, ReferenceData known)
    {
        var broken = reader.Refusals.Count;
        reader.Line("base", value, 1, 60);
        if (reader.Refusals.Count > broken)
            return value;
        var spelling = known.SpellingOf(value);
        if (spelling is null)
            reader.Refuse("base", value, Reasons.BaseNotKnown, "must be the base of a registered aircraft", NearestName.Find(value, known.Bases));
        else if (spelling != value)
            reader.Refuse("base", value, Reasons.BaseSpelledOtherwise, "must be spelled as that base is already", spelling);
        return value;
    }
}

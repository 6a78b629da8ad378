using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.AuthorityDrafts;

/// <summary>A paragraph of a regulation under which a finding may have to be reported, and the findings that it may concern.</summary>
/// <param name="Citation">The paragraph: where the rule is from.</param>
/// <param name="Who">Whose duty it is.</param>
/// <param name="About">What it names, in our words.</param>
/// <param name="TimeLimit">By when, where the paragraph was read to say so; null elsewhere.</param>
/// <param name="Systems">First part of the paths that it may concern, such as <c>exhaust</c>; empty for none by their path.</param>
/// <param name="JascPrefixes">With what the JASC codes begin that it may concern; empty text for every location.</param>
/// <param name="Conditions">The conditions that it may concern.</param>
public sealed record ReportingParagraph(
    string Citation,
    string Who,
    string About,
    string? TimeLimit,
    IReadOnlyList<string> Systems,
    IReadOnlyList<string> JascPrefixes,
    IReadOnlyList<Condition> Conditions)
{
    /// <summary>Whether a finding may fall under it.</summary>
    /// <param name="path">Path of the location.</param>
    /// <param name="jascCode">Its JASC code; null where it has none.</param>
    /// <param name="condition">The condition.</param>
    public bool MayConcern(string path, string? jascCode, Condition condition) => Conditions.Contains(condition) && IsAt(path, jascCode);

    /// <summary>Whether it may concern a location at all.</summary>
    /// <param name="path">Path of the location.</param>
    /// <param name="jascCode">Its JASC code; null where it has none.</param>
    public bool IsAt(string path, string? jascCode)
    {
        ArgumentNullException.ThrowIfNull(path);
        return Systems.Contains(path.Split('/')[0], StringComparer.Ordinal)
            || JascPrefixes.Any(p => (jascCode ?? "").StartsWith(p, StringComparison.Ordinal));
    }
}

using FleetTrend.Records.Findings;
using FleetTrend.Records.Words;

namespace FleetTrend.Trends.OpenFindings;

/// <summary>How an open finding reads.</summary>
public static class OpenFindingWords
{
    /// <summary>What was done about it: <c>deferred on 3 Mar 2026</c>, <c>no action recorded</c>.</summary>
    public static string Left(OpenFinding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding is { LeftBy: { } action, LeftDate: { } day } ? $"{ActionWords.Done(action)} on {NumberWords.Day(day)}" : "no action recorded";
    }

    /// <summary>Its size, and how it grew: <c>12 mm, 4.5 mm 96 h before</c>; empty where none was measured.</summary>
    public static string Size(OpenFinding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (finding.LastMillimetres is not { } last)
            return "";
        var size = $"{NumberWords.Rounded(last)} mm";
        return finding is { GrowthHours: { } hours, FirstMillimetres: { } first }
            ? first == last ? $"{size}, as {NumberWords.Hours(hours)} before" : $"{size}, {NumberWords.Rounded(first)} mm {NumberWords.Hours(hours)} before"
            : size;
    }

    /// <summary>The finding in one line: what, where, what was done, and how many flight hours ago it was seen and looked at.</summary>
    public static string Statement(OpenFinding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        var size = Size(finding);
        return $"{finding.Registration}, {LocationWords.Name(finding.Location)}: {ConditionWords.Name(finding.Condition)}{(size.Length > 0 ? $" ({size})" : "")}, "
            + $"{Left(finding)}; first seen {NumberWords.Hours(finding.HoursSinceFound)} ago, last looked at {NumberWords.Hours(finding.HoursSinceLook)} ago";
    }

    /// <summary>The caution that belongs to a finding; null where it has none of its own.</summary>
    public static string? Caution(OpenFinding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Condition switch
        {
            Condition.LeakTrace when finding.Location.StartsWith("exhaust/", StringComparison.Ordinal) =>
                "An exhaust leak can put carbon monoxide into the cabin and hot gas onto fuel lines and structure.",
            Condition.LeakTrace => "What leaks beside a hot exhaust can burn.",
            Condition.MissingPiece => "A piece that is gone can block the exhaust or let hot gas out.",
            _ => null,
        };
    }

    /// <summary>Who decides, for every list of open findings.</summary>
    public const string WhoDecides = "Whether an aircraft flies with it is for the licensed person to decide, not for this list.";
}

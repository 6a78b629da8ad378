using FleetTrend.Records.Words;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.OpenFindings;

namespace FleetTrend.Trends.LookLists;

/// <summary>How a look list reads.</summary>
public static class LookListWords
{
    /// <summary>What the list is and what it is not.</summary>
    public const string Meaning =
        "Every location is on the list; what stands out has its reason. The list comes on top of the maker's inspection programme and replaces none of it.";

    private const int MostBefore = 3;
    private const int MostNamed = 4;
    private const int MostOfOne = 3;

    /// <summary>The aircraft in a sentence: what stands out first.</summary>
    public static string Statement(LookList list)
    {
        ArgumentNullException.ThrowIfNull(list);
        var groups = Standing(list).GroupBy(Together, StringComparer.Ordinal).ToList();
        if (groups.Count == 0)
            return $"Nothing stands out on {list.Registration}; all {NumberWords.Count(list.Lines.Count, "location", "locations")} are to be looked at as always.";
        var named = groups.Take(MostNamed).Select(g => $"{LocationWords.List([.. g.Select(l => l.Location)], MostOfOne)} ({Shared([.. g])})");
        var more = groups.Skip(MostNamed).Sum(g => g.Count());
        return $"Look first at {string.Join("; ", named)}{(more > 0 ? $"; and {NumberWords.Count(more)} more" : "")}.";
    }

    /// <summary>Lines that stand out, the weightiest reason first.</summary>
    public static IEnumerable<LookListLine> Standing(LookList list)
    {
        ArgumentNullException.ThrowIfNull(list);
        return list.Lines.Where(l => l.Reasons.Count > 0).OrderBy(l => l.Reasons[0]).ThenByDescending(l => l.Reasons.Count);
    }

    /// <summary>All reasons of a line; empty where it has none.</summary>
    public static string Reasons(LookListLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return FirstLetter.Capital(string.Join("; ", line.Reasons.Select(r => Reason(line, r))));
    }

    /// <summary>One of them, small first letter.</summary>
    public static string Reason(LookListLine line, LookReason reason)
    {
        ArgumentNullException.ThrowIfNull(line);
        return reason switch
        {
            LookReason.OpenFirst or LookReason.Open => Open(line, reason == LookReason.OpenFirst),
            LookReason.Called => $"in the call about {line.CalledFor}",
            LookReason.NeverLookedAt => line.PassedOverDate is { } passed ? $"never looked at; not examined on {NumberWords.Day(passed)}" : "never looked at",
            LookReason.PastInterval => $"not looked at for {NumberWords.Hours(line.HoursSinceLook!.Value)}"
                + (line.PassedOverDate is { } passed ? $"; not examined on {NumberWords.Day(passed)}" : ""),
            LookReason.NotSeenSinceAction => Done(line),
            LookReason.CameBack => Again(line),
            LookReason.MayHaveFailed => $"{NumberWords.Percent(line.Part!.Chance!.Value)} chance that it has failed by its next look",
            _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "Unknown reason."),
        };
    }

    /// <summary>What was found there before: <c>Crack 3 Mar 2026, welded</c>; empty where nothing is on record.</summary>
    public static string Before(LookListLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        if (line.Before.Count == 0)
            return "";
        var shown = string.Join("; ", line.Before.Take(MostBefore).Select(Seen));
        var more = line.Before.Count - MostBefore;
        return FirstLetter.Capital(more > 0 ? $"{shown}; {NumberWords.Count(more)} before" : shown);
    }

    /// <summary>The last look: <c>3 Mar 2026, 62 h ago</c>; <c>Never</c> where there is none.</summary>
    public static string Looked(LookListLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line.LastLookDate is not { } day ? "Never"
            : line.HoursSinceLook is { } hours ? $"{NumberWords.Day(day)}, {NumberWords.Hours(hours)} ago" : NumberWords.Day(day);
    }

    /// <summary>The part: its age, and the chance with its limits; empty where there is none.</summary>
    public static string Part(LookListLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        if (line.Part is not { } part)
            return "";
        var age = part.AgeHours is { } hours ? $"{NumberWords.Hours(hours)} old" : "Age not known";
        return part is { Chance: { } chance, Lower: { } lower, Upper: { } upper }
            ? $"{age}; {NumberWords.Percent(chance)} ({NumberWords.Percent(lower)} to {NumberWords.Percent(upper)})" : age;
    }

    /// <summary>What a call is about: <c>cracks</c>, <c>failed exhaust gaskets</c>.</summary>
    internal static string About(ProposedFlag call) => call switch
    {
        { Condition: { } condition } => ConditionWords.Many(condition),
        { PartKind: { } kind } => $"failed {LocationWords.Plural(LocationWords.Kind(call.PartKindTitle, kind))}",
        _ => "this aircraft",
    };

    /// <summary>What is open is said one by one; of the rest, locations with the same reason stand together.</summary>
    private static string Together(LookListLine line) => line.Reasons[0] switch
    {
        LookReason.OpenFirst or LookReason.Open => line.Location,
        LookReason.Called => $"called {line.CalledFor}",
        var reason => $"{reason}",
    };

    private static string Shared(IReadOnlyList<LookListLine> lines)
    {
        if (lines.Count == 1)
            return Reason(lines[0], lines[0].Reasons[0]);
        return lines[0].Reasons[0] switch
        {
            LookReason.NeverLookedAt => "never looked at",
            LookReason.PastInterval => $"not looked at for up to {NumberWords.Hours(lines.Max(l => l.HoursSinceLook!.Value))}",
            LookReason.NotSeenSinceAction => "worked on and not looked at since",
            LookReason.CameBack => "the same was found there before",
            LookReason.MayHaveFailed => $"up to {NumberWords.Percent(lines.Max(l => l.Part!.Chance!.Value))} chance that it has failed by its next look",
            var reason => Reason(lines[0], reason),
        };
    }

    private static string Seen(SeenBefore seen)
    {
        var size = seen.Millimetres is { } mm ? $" {NumberWords.Rounded(mm)} mm" : "";
        var done = seen.Action is { } action ? $", {ActionWords.Done(action)}" : seen.IsOpen ? ", no action recorded" : ", gone at a later look";
        return $"{ConditionWords.Name(seen.Condition)}{size} {NumberWords.Day(seen.FoundDate)}{done}";
    }

    private static string Open(LookListLine line, bool isFirst)
    {
        var open = line.Before.Where(b => b.IsOpen && OpenFinding.ComesFirst(b.Condition) == isFirst);
        return string.Join(", ", open.Select(b => $"{ConditionWords.Name(b.Condition)} open for {NumberWords.Hours(b.HoursSinceFound)}"));
    }

    private static string Done(LookListLine line)
    {
        var done = line.Before.First(b => !b.IsOpen && b.ActionDate is { } day && !(line.LastLookDate > day));
        return $"{ActionWords.Done(done.Action!.Value)} on {NumberWords.Day(done.ActionDate!.Value)} and not looked at since";
    }

    private static string Again(LookListLine line)
    {
        var most = line.Before.GroupBy(b => b.Condition).MaxBy(g => g.Count())!;
        return $"{ConditionWords.Count(most.Count(), most.Key)} here before";
    }
}

using FleetTrend.Records.Findings;

namespace FleetTrend.Reports.Words;

/// <summary>Conditions in a mechanic's words.</summary>
public static class ConditionWords
{
    /// <summary>Many of them: <c>cracks</c>.</summary>
    public static string Many(Condition condition) => condition switch
    {
        Condition.Crack => "cracks",
        Condition.LeakTrace => "leak traces",
        Condition.Erosion => "eroded places",
        Condition.Corrosion => "corroded places",
        Condition.Looseness => "loose places",
        Condition.MissingPiece => "missing pieces",
        Condition.Distortion => "distorted places",
        Condition.Wear => "worn places",
        Condition.Hardening => "hardened places",
        _ => "other findings",
    };

    /// <summary>One of them: <c>crack</c>.</summary>
    public static string One(Condition condition) => condition switch
    {
        Condition.Crack => "crack",
        Condition.LeakTrace => "leak trace",
        Condition.Erosion => "eroded place",
        Condition.Corrosion => "corroded place",
        Condition.Looseness => "loose place",
        Condition.MissingPiece => "missing piece",
        Condition.Distortion => "distorted place",
        Condition.Wear => "worn place",
        Condition.Hardening => "hardened place",
        _ => "other finding",
    };

    /// <summary>A count of them: <c>3 cracks</c>.</summary>
    public static string Count(int count, Condition condition) => NumberWords.Count(count, One(condition), Many(condition));

    /// <summary>What an aircraft does again: <c>cracks again</c>.</summary>
    public static string Again(Condition condition) => condition switch
    {
        Condition.Crack => "cracks again",
        Condition.LeakTrace => "leaks again",
        Condition.Erosion => "erodes again",
        Condition.Corrosion => "corrodes again",
        Condition.Looseness => "comes loose again",
        Condition.MissingPiece => "loses a piece again",
        Condition.Distortion => "distorts again",
        Condition.Wear => "wears again",
        Condition.Hardening => "hardens again",
        _ => "has a finding again",
    };
}

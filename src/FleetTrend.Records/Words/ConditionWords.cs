using FleetTrend.Records.Findings;

namespace FleetTrend.Records.Words;

/// <summary>Conditions in a mechanic's words.</summary>
public static class ConditionWords
{
    /// <summary>By name, small first letter: <c>crack</c>, <c>erosion</c>.</summary>
    public static string Name(Condition condition) => condition switch
    {
        Condition.Crack => "crack",
        Condition.LeakTrace => "leak trace",
        Condition.Erosion => "erosion",
        Condition.Corrosion => "corrosion",
        Condition.Looseness => "looseness",
        Condition.MissingPiece => "missing piece",
        Condition.Distortion => "distortion",
        Condition.Wear => "wear",
        Condition.Hardening => "hardening",
        _ => "other finding",
    };

    /// <summary>Many of them: <c>cracks</c>, <c>cases of erosion</c>: one location may erode more than once.</summary>
    public static string Many(Condition condition) => condition switch
    {
        Condition.Crack or Condition.LeakTrace or Condition.MissingPiece => Name(condition) + "s",
        Condition.Erosion or Condition.Corrosion or Condition.Looseness or Condition.Distortion or Condition.Wear or Condition.Hardening
            => "cases of " + Name(condition),
        _ => "other findings",
    };

    /// <summary>One of them: <c>crack</c>, <c>case of erosion</c>.</summary>
    public static string One(Condition condition) => condition switch
    {
        Condition.Erosion or Condition.Corrosion or Condition.Looseness or Condition.Distortion or Condition.Wear or Condition.Hardening
            => "case of " + Name(condition),
        _ => Name(condition),
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

    /// <summary>What a repair did that did not hold: <c>cracked again</c>.</summary>
    public static string CameBack(Condition condition) => condition switch
    {
        Condition.Crack => "cracked again",
        Condition.LeakTrace => "leaked again",
        Condition.Erosion => "eroded again",
        Condition.Corrosion => "corroded again",
        Condition.Looseness => "came loose again",
        Condition.MissingPiece => "lost a piece again",
        Condition.Distortion => "distorted again",
        Condition.Wear => "wore again",
        Condition.Hardening => "hardened again",
        _ => "had a finding again",
    };
}

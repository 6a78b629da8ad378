using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Restarts;

/// <summary>What a flag is about, in the form that stays the same from week to week.</summary>
public static class FlagSubjects
{
    /// <summary>An aircraft that has more of a condition than its like.</summary>
    public static string Drift(string registration, Condition condition) => $"airframe-drift/{registration}/{condition}";

    /// <summary>A location where a condition comes back.</summary>
    public static string Repeat(string registration, string location, Condition condition) => $"repeat-location/{registration}/{location}/{condition}";

    /// <summary>A base where a kind of part fails earlier or sooner.</summary>
    public static string BaseLife(string typeGroup, string atBase, string kind) => $"base-part-life/{typeGroup}/{atBase}/{kind}";

    /// <summary>The aircraft, or for a base the type group, that a subject names; empty for a subject of another form.</summary>
    public static string About(string subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return subject.Split('/') is [_, var about, ..] ? about : "";
    }
}

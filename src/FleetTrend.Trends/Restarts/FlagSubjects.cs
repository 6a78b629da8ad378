using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Restarts;

/// <summary>What a flag is about, in the form that stays the same from week to week.</summary>
public static class FlagSubjects
{
    /// <summary>An aircraft that gets worse in a condition.</summary>
    public static string Drift(string registration, Condition condition) => $"airframe-drift/{registration}/{condition}";

    /// <summary>An aircraft on which parts of a kind fail more often than they did.</summary>
    public static string PartDrift(string registration, string kind) => $"airframe-part-drift/{registration}/{kind}";

    /// <summary>A base whose aircraft get worse in a condition.</summary>
    public static string BaseDrift(string typeGroup, string atBase, Condition condition) => $"base-drift/{typeGroup}/{atBase}/{condition}";

    /// <summary>A location where a condition comes back: flags of an earlier version.</summary>
    public static string Repeat(string registration, string location, Condition condition) => $"repeat-location/{registration}/{location}/{condition}";

    /// <summary>A base where a kind of part fails earlier or sooner than elsewhere, or more often than it did.</summary>
    public static string BaseLife(string typeGroup, string atBase, string kind) => $"base-part-life/{typeGroup}/{atBase}/{kind}";

    /// <summary>The aircraft, or for a base the type group, that a subject names; empty for a subject of another form.</summary>
    public static string About(string subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return subject.Split('/') is [_, var about, ..] ? about : "";
    }

    /// <summary>The parts of a subject, told again; null for a subject of another form.</summary>
    public static FlagSubject? Read(string subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return subject.Split('/') switch
        {
            ["airframe-drift", var registration, var condition] when Enum.TryParse<Condition>(condition, out var c) =>
                new FlagSubject { Registration = registration, Condition = c },
            ["airframe-part-drift", var registration, var kind] => new FlagSubject { Registration = registration, Kind = kind },
            ["base-drift", var typeGroup, var atBase, var condition] when Enum.TryParse<Condition>(condition, out var c) =>
                new FlagSubject { TypeGroup = typeGroup, Base = atBase, Condition = c },
            ["repeat-location", var registration, .. var path, var condition] when path.Length > 0 && Enum.TryParse<Condition>(condition, out var c) =>
                new FlagSubject { Registration = registration, Location = string.Join('/', path), Condition = c },
            ["base-part-life", var typeGroup, var atBase, var kind] => new FlagSubject { TypeGroup = typeGroup, Base = atBase, Kind = kind },
            _ => null,
        };
    }
}

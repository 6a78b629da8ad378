using FleetTrend.Observations.Lives;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Flags;

namespace FleetTrend.Trends.Restarts;

/// <summary>
/// From when on looks count again towards flags that people have closed or acted on. Whether a flag was closed as corrected or as a false
/// alarm, what came until that day is settled, and only what comes after can raise it again.
/// </summary>
internal sealed class FlagRestarts
{
    private readonly Dictionary<string, DateOnly> closedOn;

    private FlagRestarts(Dictionary<string, DateOnly> closedOn) => this.closedOn = closedOn;

    /// <summary>Whether anything starts again.</summary>
    public bool Any => closedOn.Count > 0;

    /// <summary>
    /// Restarts at the newest closing of each flag about a type group or an aircraft of it; days are those of UTC, as the as-of day is.
    /// </summary>
    /// <param name="inputs">The type group.</param>
    public static FlagRestarts At(TypeGroupInputs inputs)
    {
        var about = inputs.Aircraft.Select(a => a.Registration).Append(inputs.TypeGroup).ToHashSet(StringComparer.Ordinal);
        return At(inputs.FlagClosings.Where(c => about.Contains(FlagSubjects.About(c.Subject))));
    }

    /// <summary>Restarts at the newest closing of each flag.</summary>
    /// <param name="closings">Closings of any flags.</param>
    public static FlagRestarts At(IEnumerable<FlagClosing> closings) => new(closings
        .Where(c => c.CountedAfterDate is not null)
        .GroupBy(c => c.Subject, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.Max(c => c.CountedAfterDate!.Value), StringComparer.Ordinal));

    /// <summary>The day on which the newest flag of that subject was closed; null where none was.</summary>
    public DateOnly? Find(string subject) => closedOn.TryGetValue(subject, out var day) ? day : null;

    /// <summary>
    /// The day after which a condition at a location counts towards the aircraft's flag: the later closing of that flag and of the location's own, as
    /// an earlier version raised them. Null where all counts.
    /// </summary>
    public DateOnly? DayOf(string registration, string location, Condition condition)
    {
        var (place, aircraft) = (Find(FlagSubjects.Repeat(registration, location, condition)), Find(FlagSubjects.Drift(registration, condition)));
        return place > aircraft || aircraft is null ? place : aircraft;
    }

    /// <summary>
    /// Whether a life counts towards a flag about its base: where one was closed, a part that went in after that day. What went in before
    /// was fitted as it was done then, whenever it fails.
    /// </summary>
    public bool Counts(ObservedLife life) => Find(FlagSubjects.BaseLife(life.TypeGroup, life.Base, life.Kind.Name)) is not { } day || life.StartDate > day;
}

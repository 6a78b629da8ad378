using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Flags;

namespace FleetTrend.Trends.Restarts;

/// <summary>
/// From when on events and hours count again towards flags that people have closed. Whether a flag was closed as corrected or as a false
/// alarm, what came until that day is settled, and only what comes after can raise it again.
/// </summary>
internal sealed class FlagRestarts
{
    private readonly Dictionary<string, DateOnly> closedOn;
    private readonly Dictionary<string, HoursByDay> hoursOf;

    private FlagRestarts(Dictionary<string, DateOnly> closedOn, Dictionary<string, HoursByDay> hoursOf) =>
        (this.closedOn, this.hoursOf) = (closedOn, hoursOf);

    /// <summary>None: everything counts.</summary>
    public static FlagRestarts None { get; } = new([], []);

    /// <summary>Whether anything starts again.</summary>
    public bool Any => closedOn.Count > 0;

    /// <summary>
    /// Restarts at the newest closing of each flag about a type group or an aircraft of it; days are those of UTC, as the as-of day is.
    /// </summary>
    /// <param name="closings">Closings of any flags.</param>
    /// <param name="typeGroup">The type group.</param>
    /// <param name="aircraft">Its aircraft.</param>
    public static FlagRestarts At(IEnumerable<FlagClosing> closings, string typeGroup, IReadOnlyList<AircraftObservations> aircraft)
    {
        var hours = aircraft.ToDictionary(a => a.Registration, a => a.Hours, StringComparer.Ordinal);
        return new FlagRestarts(Days(closings.Where(c => FlagSubjects.About(c.Subject) is var about && (about == typeGroup || hours.ContainsKey(about)))),
            hours);
    }

    /// <summary>Days of the newest closings alone, of the whole fleet.</summary>
    public static Dictionary<string, DateOnly> Days(IEnumerable<FlagClosing> closings) => closings
        .Where(c => c.CountedAfterDate is not null)
        .GroupBy(c => c.Subject, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.Max(c => c.CountedAfterDate!.Value), StringComparer.Ordinal);

    /// <summary>The day on which the newest flag of that subject was closed; null where none was.</summary>
    public DateOnly? Find(string subject) => closedOn.TryGetValue(subject, out var day) ? day : null;

    /// <summary>The later day of the closings of a place's own flag and of the aircraft's, which names its places; null where neither was closed.</summary>
    public static DateOnly? DayOf(IReadOnlyDictionary<string, DateOnly> closedOn, string registration, string location, Condition condition)
    {
        var place = closedOn.TryGetValue(FlagSubjects.Repeat(registration, location, condition), out var p) ? p : (DateOnly?)null;
        var aircraft = closedOn.TryGetValue(FlagSubjects.Drift(registration, condition), out var a) ? a : (DateOnly?)null;
        return place > aircraft || aircraft is null ? place : aircraft;
    }

    /// <summary>
    /// For a condition at a place of an aircraft, the day and hours after which events and hours count: the later closing of the place's own
    /// flag and of the aircraft's, which names its places. Null where neither was closed.
    /// </summary>
    public FlagRestart? Find(string registration, string location, Condition condition)
    {
        return DayOf(closedOn, registration, location, condition) is { } closed
            && hoursOf[registration].On(closed) is { } hours ? new FlagRestart(closed, hours) : null;
    }

    /// <summary>
    /// Whether a life counts towards a flag about its base: where one was closed, a part that went in after that day. What went in before
    /// was fitted as it was done then, whenever it fails.
    /// </summary>
    public bool Counts(ObservedLife life) => Find(FlagSubjects.BaseLife(life.TypeGroup, life.Base, life.Kind.Name)) is not { } day || life.StartDate > day;
}

using FleetTrend.Observations;
using FleetTrend.Trends.Restarts;

namespace FleetTrend.Trends.Expectations;

/// <summary>Looks as they count towards flags: where one was closed or acted on, what came after that day.</summary>
internal sealed class RestartedLooks
{
    private readonly FlagRestarts restarts;
    private readonly string typeGroup;
    private readonly Dictionary<string, HoursByDay> hours;

    /// <summary>Makes it.</summary>
    public RestartedLooks(TypeGroupInputs inputs)
    {
        restarts = FlagRestarts.At(inputs);
        typeGroup = inputs.TypeGroup;
        hours = inputs.Aircraft.ToDictionary(a => a.Registration, a => a.Hours, StringComparer.Ordinal);
    }

    /// <summary>Whether any look counts less.</summary>
    public bool Any => restarts.Any;

    /// <summary>Looks of one class with aircraft as units.</summary>
    public IEnumerable<WatchedLook> OfAircraft(ConditionClass of, IEnumerable<WatchedLook> looks) => looks.Select(l => After(l, of switch
    {
        { Condition: { } condition } => restarts.DayOf(l.Registration, l.Location, condition),
        { Kind: { } kind } => restarts.Find(FlagSubjects.PartDrift(l.Registration, kind)),
        _ => null,
    })).OfType<WatchedLook>();

    /// <summary>
    /// Looks of one class with bases as units. Of parts, those that went in after the day count: what went in before was fitted as it was done then,
    /// whenever it fails.
    /// </summary>
    public IEnumerable<WatchedLook> OfBases(ConditionClass of, IEnumerable<WatchedLook> looks) => looks.Select(l => of switch
    {
        { Condition: { } condition } => After(l, restarts.Find(FlagSubjects.BaseDrift(typeGroup, l.Base, condition))),
        { Kind: { } kind } => restarts.Find(FlagSubjects.BaseLife(typeGroup, l.Base, kind)) is not { } day || l.Fitted > day ? l : null,
        _ => l,
    }).OfType<WatchedLook>();

    private WatchedLook? After(WatchedLook look, DateOnly? day)
    {
        if (day is not { } last)
            return look;
        var share = ShareAfter.Of(look, last, hours[look.Registration]);
        return share > 0 ? look with { Exposure = look.Exposure * share } : null;
    }
}

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

    /// <summary>A look of one class with aircraft as units, or null.</summary>
    public WatchedLook? OfAircraft(ConditionClass of, WatchedLook look) => After(look, of switch
    {
        { Condition: { } condition } => restarts.DayOf(look.Registration, look.Location, condition),
        { Kind: { } kind } => restarts.Find(FlagSubjects.PartDrift(look.Registration, kind)),
        _ => null,
    });

    /// <summary>
    /// A look of one class with bases as units, or null. Of parts, those that went in after the day count: what went in before was fitted as it was
    /// done then, whenever it fails.
    /// </summary>
    public WatchedLook? OfBase(ConditionClass of, WatchedLook look) => of switch
    {
        { Condition: { } condition } => After(look, restarts.Find(FlagSubjects.BaseDrift(typeGroup, look.Base, condition))),
        { Kind: { } kind } => restarts.Find(FlagSubjects.BaseLife(typeGroup, look.Base, kind)) is not { } day || look.Fitted > day ? look : null,
        _ => look,
    };

    private WatchedLook? After(WatchedLook look, DateOnly? day)
    {
        if (day is not { } last)
            return look;
        var share = ShareAfter.Of(look, last, hours[look.Registration]);
        return share > 0 ? look with { Exposure = look.Exposure * share } : null;
    }
}

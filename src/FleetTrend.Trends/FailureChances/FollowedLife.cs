using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Records;

namespace FleetTrend.Trends.FailureChances;

/// <summary>A life with the ages of all its looks, so that it can be told as it was known on an earlier day.</summary>
internal sealed class FollowedLife
{
    private readonly HoursByDay hours;
    private readonly Hours start;
    private readonly List<Hours> goods;

    private FollowedLife(ObservedLife life, HoursByDay hours, IEnumerable<Hours> looks)
    {
        (Life, this.hours, start) = (life, hours, hours.On(life.StartDate) ?? Hours.Zero);
        // It was good at the looks between, and at the last good one, which may have been at the part and not at its location.
        goods = [.. looks.Select(h => life.Entry + (h - start)).Where(a => a > life.Entry && a < life.LastGood)];
        if (life.LastGood > life.Entry)
            goods.Add(life.LastGood);
    }

    /// <summary>The life as it is known now.</summary>
    public ObservedLife Life { get; }

    /// <summary>Every life of the type group that takes part in a fit.</summary>
    public static IReadOnlyList<FollowedLife> Find(TypeGroupInputs inputs) =>
        [.. inputs.Aircraft.Where(a => a.Hours.Days.Count > 0).SelectMany(a => Find(a, inputs.TypeGroup))];

    /// <summary>The life as it was known on a day; null before it began.</summary>
    public ObservedLife? AsOf(DateOnly day)
    {
        if (AgeOn(day) is not { } age)
            return null;
        if (Life.FirstBad <= age)
            return Life;
        var good = goods.FindLast(g => g <= age) is var last && last > Life.Entry ? last : Life.Entry;
        return Life with
        {
            LastGood = good,
            FirstBad = null,
            Failure = null,
            Ending = LifeEnding.InService,
            Exclusion = good > Life.Entry ? null : LifeExclusion.NeverExamined,
        };
    }

    /// <summary>Time in service of the aircraft at an age of the part.</summary>
    public Hours HoursAt(Hours age) => start + (age - Life.Entry);

    /// <summary>As <see cref="LooksAfter"/>, of the looks after so many hours of the aircraft.</summary>
    public IEnumerable<(Hours Good, Hours Look, bool Failed)> LooksAfterHours(Hours hours) =>
        HoursAt(Life.FirstBad ?? Life.LastGood) <= hours ? [] : Looks().Where(l => HoursAt(l.Look) > hours);

    /// <summary>The looks after a day that came while it was good: ages at the look before and at this one, and whether it was found failed.</summary>
    public IEnumerable<(Hours Good, Hours Look, bool Failed)> LooksAfter(DateOnly day)
    {
        var known = AgeOn(day);
        return Looks().Where(l => known is not { } age || l.Look > age);
    }

    private IEnumerable<(Hours Good, Hours Look, bool Failed)> Looks()
    {
        var before = Life.Entry;
        foreach (var good in goods)
        {
            yield return (before, good, false);
            before = good;
        }

        if (Life.FirstBad is { } bad)
            yield return (before, bad, true);
    }

    private Hours? AgeOn(DateOnly day) =>
        Life.StartDate > day || hours.On(day) is not { } then ? null : Life.Entry + (then > start ? then - start : Hours.Zero);

    private static IEnumerable<FollowedLife> Find(AircraftObservations aircraft, string typeGroup)
    {
        var looks = aircraft.Exposures.Where(e => e.TypeGroup == typeGroup)
            .SelectMany(e => e.LookHours.Select(h => (e.Location, Hours: h))).Distinct().OrderBy(l => l.Hours)
            .ToLookup(l => l.Location, l => l.Hours, StringComparer.Ordinal);
        return aircraft.Lives.Where(l => l.TypeGroup == typeGroup && l.Exclusion is null).Select(l => new FollowedLife(l, aircraft.Hours, looks[l.Location]));
    }
}

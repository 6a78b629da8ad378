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

    /// <summary>The looks after a day that came while it was good: ages at the look before and at this one, and whether it was found failed.</summary>
    public IEnumerable<(Hours Good, Hours Look, bool Failed)> LooksAfter(DateOnly day)
    {
        var known = AgeOn(day);
        var before = Life.Entry;
        foreach (var good in goods)
        {
            if (known is not { } age || good > age)
                yield return (before, good, false);
            before = good;
        }

        if (Life.FirstBad is { } bad && (known is not { } now || bad > now))
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

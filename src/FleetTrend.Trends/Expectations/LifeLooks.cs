using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Records;
using FleetTrend.Statistics.Lives;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.Expectations;

/// <summary>
/// Looks at parts with a life: each closes the rise of the cumulative hazard of their like between the part's age then and at the look before.
/// </summary>
internal static class LifeLooks
{
    /// <summary>Looks at the parts of a kind; null where their lives do not tell a distribution.</summary>
    public static IReadOnlyList<WatchedLook>? Find(TypeGroupInputs inputs, string kind)
    {
        var whole = inputs.PartLives.FirstOrDefault(t => t.Kind == kind && t.Base is null);
        if (whole?.Fits.FirstOrDefault(f => f.Distribution == LifeDistributionFit.Weibull) is not { First.Value: { } shape, Second.Value: { } scale })
            return null;
        var like = new LifeModel(LifeDistribution.Weibull, scale, shape);
        return [.. inputs.Aircraft.Where(a => a.Hours.Days.Count > 0).SelectMany(a => Find(inputs.TypeGroup, a, kind, like))];
    }

    private static IEnumerable<WatchedLook> Find(string typeGroup, AircraftObservations aircraft, string kind, LifeModel like)
    {
        var looks = aircraft.Exposures.Where(e => e.TypeGroup == typeGroup && e.Kind.Name == kind)
            .SelectMany(e => e.LookHours.Select(h => (e.Location, h))).Distinct().OrderBy(l => l.h).ToLookup(l => l.Location, l => l.h, StringComparer.Ordinal);
        // Sums must not depend on the order in which lives came.
        return aircraft.Lives.Where(l => l.TypeGroup == typeGroup && l.Kind.Name == kind && l.Exclusion is null)
            .OrderBy(l => l.Location, StringComparer.Ordinal).ThenBy(l => l.StartDate).ThenBy(l => l.Entry).ThenBy(l => l.LastGood).ThenBy(l => l.FirstBad)
            .SelectMany(l => Find(aircraft.Hours, l, looks[l.Location], like));
    }

    private static IEnumerable<WatchedLook> Find(HoursByDay hours, ObservedLife life, IEnumerable<Hours> looks, LifeModel like)
    {
        var start = hours.On(life.StartDate) ?? Hours.Zero;
        var before = life.Entry;
        var since = life.StartDate;
        // It was good at the looks between, and at the last good one, which may have been at the part and not at its location.
        foreach (var age in looks.Select(h => life.Entry + (h - start)).Where(a => a > life.Entry && a < life.LastGood).Append(life.LastGood))
        {
            if (age > before)
                yield return Close(age, 0);
        }

        if (life.FirstBad is { } bad)
            yield return Close(bad, 1);

        WatchedLook Close(Hours age, int found)
        {
            var date = HoursCalendar.DayOf(hours, start + (age - life.Entry));
            var look = new WatchedLook(life.Registration, life.Base, life.Location, date, Rise(like, before, age), found, since, life.StartDate);
            (before, since) = (age, date);
            return look;
        }
    }

    private static double Rise(LifeModel like, Hours from, Hours to) => Math.Max(0, like.CumulativeHazard(to.Value) - like.CumulativeHazard(from.Value));
}

using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Records;
using FleetTrend.Statistics.Lives;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.Expectations;

/// <summary>
/// Looks at parts with a life: each closes the rise of the cumulative hazard of their like between the part's age then and at the look before.
/// </summary>
/// <remarks>Of looks between the ends of a life none is kept: they are taken to have come at the look interval.</remarks>
internal static class LifeLooks
{
    /// <summary>Looks at the parts of a kind; null where their lives do not tell a distribution.</summary>
    public static IReadOnlyList<WatchedLook>? Find(TypeGroupInputs inputs, string kind)
    {
        // Sums must not depend on the order in which lives came.
        var lives = inputs.Aircraft.Where(a => a.Hours.Days.Count > 0)
            .SelectMany(a => a.Lives.Where(l => l.TypeGroup == inputs.TypeGroup && l.Kind.Name == kind && l.Exclusion is null)
                .OrderBy(l => l.Location, StringComparer.Ordinal).ThenBy(l => l.StartDate).ThenBy(l => l.Entry).ThenBy(l => l.LastGood).ThenBy(l => l.FirstBad)
                .Select(l => (a.Hours, Life: l)))
            .ToList();
        var fitted = FittedLives.From(lives.Select(l => l.Life));
        if (fitted.Failures < inputs.Parameters.MinimumFailuresForFit
            || !LifeFit.Fit(LifeDistribution.Weibull, fitted.Lives.Count > 2000 ? fitted.InWholeHours() : fitted.Lives).TryGetValue(out var fit))
        {
            return null;
        }

        var interval = inputs.Parameters.LookIntervalHoursOf(inputs.TypeGroup, kind);
        return [.. lives.SelectMany(l => Find(l.Hours, l.Life, fit.Model, interval))];
    }

    private static IEnumerable<WatchedLook> Find(HoursByDay hours, ObservedLife life, LifeModel like, double interval)
    {
        var start = hours.On(life.StartDate) ?? Hours.Zero;
        DateOnly DayAt(double age) => HoursCalendar.DayOf(hours, Hours.FromTenths((long)Math.Round(10 * (start.Value + age - life.Entry.Value))));
        var before = life.Entry.Value;
        var good = life.LastGood.Value;
        var looks = Math.Max(1, (int)Math.Ceiling((good - before) / interval));
        for (var i = 1; i <= looks && good > life.Entry.Value; i++)
        {
            var age = life.Entry.Value + (good - life.Entry.Value) * i / looks;
            yield return Look(life, DayAt(age), Rise(like, before, age), 0, DayAt(before));
            before = age;
        }

        if (life.FirstBad is { } bad)
            yield return Look(life, DayAt(bad.Value), Rise(like, before, bad.Value), 1, DayAt(before));
    }

    private static double Rise(LifeModel like, double from, double to) => Math.Max(0, like.CumulativeHazard(to) - like.CumulativeHazard(from));

    private static WatchedLook Look(ObservedLife life, DateOnly date, double exposure, int found, DateOnly since) =>
        new(life.Registration, life.Base, life.Location, date, exposure, found, since, life.StartDate);
}

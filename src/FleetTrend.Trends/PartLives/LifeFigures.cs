using FleetTrend.Records.Words;
using FleetTrend.Statistics;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Trends.PartLives;

/// <summary>
/// Ages and chances of a set of lives as figures. A fitted law has a tail below the first failure and beyond the oldest age; what it says
/// there is no finding, so the figure says what the data do instead.
/// </summary>
internal static class LifeFigures
{
    private const string EarlyMethod =
        "failures before that age over the hazard passed there, limits of a count (Garwood 1936) with the spread between aircraft";

    /// <summary>An age by which a share has failed.</summary>
    public static Figure Age(IntervalEstimate age, FittedLives lives, TrendParameters parameters, string method)
    {
        var figure = Figures.OfLives(age.Value, age.Interval, parameters.Confidence, "h", lives.Failures, lives.Count, method) with
        {
            DataFrom = lives.FirstFailureAfter,
            DataTo = lives.OldestAge,
        };
        return age.Value < lives.FirstFailureAfter ? figure with { Value = null, NotEnoughData = NoneBefore(lives) }
            : age.Value > lives.OldestAge ? figure with { Value = null, NotEnoughData = Beyond(lives) }
            : figure;
    }

    /// <summary>The chance by a law that a new part fails within so many hours.</summary>
    public static Figure Within(double hours, IntervalEstimate chance, FittedLives lives, TrendParameters parameters, string method)
    {
        var figure = Figures.OfLives(chance.Value, chance.Interval, parameters.Confidence, "", lives.Failures, lives.Count, method);
        return hours <= lives.FirstFailureAfter ? figure with { Value = null, Lower = null, NotEnoughData = NoneBefore(lives) }
            : hours > lives.OldestAge ? figure with { Value = null, Lower = null, Upper = null, NotEnoughData = Beyond(lives) }
            : figure;
    }

    /// <summary>The chance that a new part fails early, without a law's tail.</summary>
    public static Figure Early(Outcome<EarlyFailures> early, FittedLives lives, TrendParameters parameters) => early.Match(
        e =>
        {
            var figure = Figures.OfLives(
                e.Chance.Value, e.Chance.Interval, parameters.Confidence, "", lives.Failures, lives.Count, EarlyMethod);
            return e.Failures > 0 ? figure : figure with { Value = null, Lower = null, NotEnoughData = NoneBefore(lives) };
        },
        reason => new Figure
        {
            Confidence = parameters.Confidence,
            Unit = "",
            Events = lives.Failures,
            Lives = lives.Count,
            Method = EarlyMethod,
            NotEnoughData = $"not enough data: no part was watched in its first {NumberWords.Hours(parameters.LookIntervalHours)}",
        });

    private static string NoneBefore(FittedLives lives)
    {
        if (lives.FirstFailureAfter is not { } age) return $"none of {NumberWords.Count(lives.Count)} has failed";
        var watched = lives.Lives.Where(l => l.Entry < age).Sum(l => l.Count);
        return $"none of {NumberWords.Count(watched)} has failed before {NumberWords.Hours(age)}";
    }

    private static string Beyond(FittedLives lives) => $"later than {NumberWords.Hours(lives.OldestAge)}, the oldest age watched";
}

using FleetTrend.Records.Words;
using FleetTrend.Statistics;
using FleetTrend.Statistics.Norms;

namespace FleetTrend.Trends;

/// <summary>Makes figures from estimates: an end or a value that is not finite becomes null, since it says nothing.</summary>
internal static class Figures
{
    /// <summary>Unit of a rate at one location.</summary>
    public const string PerThousandHours = "per 1,000 h";

    /// <summary>Unit of a rate over several locations: each adds its own hours.</summary>
    public const string PerThousandLocationHours = "per 1,000 location-hours";

    /// <summary>Why a ratio to others has no value.</summary>
    public const string OthersHadNone = "not enough data: the others had no event there, so that only a lower limit exists";

    /// <summary>Beyond so many times, either way, an interval's end says only that the data set no limit.</summary>
    private const double FarthestLimit = 1000;

    private const string Clustered =
        "events over hours; limits on the logarithm with aircraft as clusters, each beside the rate of the others, Student's t (Liang and Zeger 1986; "
        + "Mancl and DeRouen 2001)";

    private const string Garwood = "events over hours, exact Poisson limits (Garwood 1936; NIST/SEMATECH e-Handbook 8.4.5.1)";

    /// <summary>A finite number, or null.</summary>
    public static double? Finite(double value) => double.IsFinite(value) ? value : null;

    /// <summary>Events per 1,000 hours of aircraft that may differ. No event gives the value zero with its upper limit; no hours give no value.</summary>
    /// <param name="aircraft">Events and hours in tenths of each.</param>
    /// <param name="confidence">Confidence of the limits.</param>
    /// <param name="unit">What the hours are.</param>
    public static Figure Rate(IReadOnlyList<(int Events, long ExposureTenths)> aircraft, double confidence, string unit)
    {
        var events = aircraft.Sum(a => a.Events);
        var figure = new Figure
        {
            Confidence = confidence,
            Unit = unit,
            Events = events,
            ExposureHours = aircraft.Sum(a => a.ExposureTenths) / 10.0,
            Method = events == 0 ? Garwood : Clustered,
        };
        List<CountExposure> watched = [.. aircraft.Where(a => a.ExposureTenths > 0).Select(a => new CountExposure(a.Events, a.ExposureTenths / 10.0))];
        return ClusteredRate.Estimate(watched, confidence)
            .Match(
                r => figure with
                {
                    Value = r.Rate * 1000,
                    Lower = r.Interval.Lower * 1000,
                    Upper = Finite(r.Interval.Upper * 1000),
                    Dispersion = r.Dispersion,
                },
                _ => figure with { NotEnoughData = $"not enough data: {NumberWords.Count(events, "event", "events")} in no watched hours" });
    }

    /// <summary>A ratio that rests on lives. An end that lies far from one says only that the data set no limit, and becomes null.</summary>
    public static Figure Times(IntervalEstimate ratio, double confidence, int failures, int lives, string method)
    {
        var figure = OfLives(ratio.Value, ratio.Interval, confidence, "", failures, lives, method);
        return figure with
        {
            Lower = figure.Lower < 1 / FarthestLimit ? null : figure.Lower,
            Upper = figure.Upper > FarthestLimit ? null : figure.Upper,
        };
    }

    /// <summary>An estimate that rests on lives.</summary>
    public static Figure OfLives(
        double value, Interval interval, double confidence, string unit, int failures, int lives, string method) => new()
        {
            Value = Finite(value),
            Lower = Finite(interval.Lower),
            Upper = Finite(interval.Upper),
            Confidence = confidence,
            Unit = unit,
            Events = failures,
            Lives = lives,
            Method = method,
            NotEnoughData = double.IsFinite(value) ? null : $"not enough data: {NumberWords.Count(failures, "failure does", "failures do")} not limit it",
        };
}

using System.Globalization;

namespace FleetTrend.Records.Words;

/// <summary>Numbers and days as people read them.</summary>
public static class NumberWords
{
    /// <summary>A number with two or three significant digits, thousands set apart: <c>1,240</c>, <c>14</c>, <c>3.9</c>, <c>0.042</c>.</summary>
    public static string Rounded(double value)
    {
        if (double.IsPositiveInfinity(value)) return "no limit";
        var format = Math.Abs(value) switch
        {
            0 => "0",
            >= 9.95 => "#,0",
            >= 0.995 => "0.0",
            >= 0.0995 => "0.00",
            >= 0.00995 => "0.000",
            >= 0.000995 => "0.0000",
            >= 0.0001 => "0.00000",
            _ => null,
        };
        if (format is null) return value > 0 ? "under 0.0001" : "-" + Rounded(-value);
        return value.ToString(format, CultureInfo.InvariantCulture);
    }

    /// <summary>A ratio: as <see cref="Rounded"/>, with as many digits as keep it on its side of 1: <c>1.02</c>, never <c>1.0</c> for 1.019.</summary>
    public static string BesideOne(double ratio)
    {
        var text = Rounded(ratio);
        if (ratio == 1 || text != Rounded(1)) return text;
        for (var digits = 2; digits <= 4; digits++)
        {
            var format = "F" + digits.ToString(CultureInfo.InvariantCulture);
            text = ratio.ToString(format, CultureInfo.InvariantCulture);
            if (text != 1.0.ToString(format, CultureInfo.InvariantCulture)) return text;
        }

        return ratio < 1 ? "just below 1" : "just above 1";
    }

    /// <summary>Hours without decimals from 100 h on, with one below: <c>1,240 h</c>, <c>61.5 h</c>.</summary>
    public static string Hours(double hours) => HoursBare(hours) + " h";

    /// <summary>Hours to the tenth, as they are recorded: <c>1,240.5 h</c>.</summary>
    public static string HoursInFull(double hours) => hours.ToString("#,0.0", CultureInfo.InvariantCulture) + " h";

    /// <summary>A share in percent: <c>12 %</c>, <c>0.4 %</c>, <c>under 0.01 %</c>.</summary>
    public static string Percent(double share)
    {
        var percent = share * 100;
        if (percent is > 0 and < 0.005) return "under 0.01 %";
        var format = Math.Abs(percent) switch
        {
            0 => "0",
            > 90 and < 99.95 => "0.#",
            >= 9.95 => "0",
            >= 0.0995 => "0.0",
            _ => "0.00",
        };
        return percent.ToString(format, CultureInfo.InvariantCulture) + " %";
    }

    /// <summary>A share that was chosen, such as a confidence, in full: <c>95 %</c>, <c>97.5 %</c>.</summary>
    public static string PercentInFull(double share) => (share * 100).ToString("0.###", CultureInfo.InvariantCulture) + " %";

    /// <summary>How often: <c>once</c>, <c>4 times</c>.</summary>
    public static string Times(int count) => count == 1 ? "once" : $"{Count(count)} times";

    /// <summary>A count with thousands set apart.</summary>
    public static string Count(long count) => count.ToString("#,0", CultureInfo.InvariantCulture);

    /// <summary>A count with its word: <c>1 crack</c>, <c>3 cracks</c>.</summary>
    public static string Count(long count, string one, string many) => $"{Count(count)} {(count == 1 ? one : many)}";

    /// <summary>A day: <c>22 Nov 2026</c>.</summary>
    public static string Day(DateOnly date) => date.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A moment in UTC: <c>22 Nov 2026 05:30 UTC</c>.</summary>
    public static string Moment(DateTimeOffset moment) =>
        moment.ToUniversalTime().ToString("d MMM yyyy HH:mm", CultureInfo.InvariantCulture) + " UTC";

    /// <summary>A moment by the clock of a place, whose offset it has: <c>Mon 30 Nov 2026, 06:00</c>.</summary>
    public static string MomentThere(DateTimeOffset moment) => moment.ToString("ddd d MMM yyyy, HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A period of days: <c>16 to 22 Nov 2026</c>.</summary>
    public static string Period(DateOnly start, DateOnly end)
    {
        if (start == end) return Day(end);
        var format = start.Year != end.Year ? "d MMM yyyy" : start.Month != end.Month ? "d MMM" : "%d";
        return $"{start.ToString(format, CultureInfo.InvariantCulture)} to {Day(end)}";
    }

    /// <summary>Hours as <see cref="Hours"/>, without the unit.</summary>
    public static string HoursBare(double hours) =>
        double.IsPositiveInfinity(hours)
            ? "no limit"
            : hours.ToString(Math.Abs(hours) >= 100 ? "#,0" : "0.#", CultureInfo.InvariantCulture);
}

using FleetTrend.Records.Words;

namespace FleetTrend.Api.Pages;

/// <summary>How long ago something was, in words.</summary>
internal static class AgeWords
{
    /// <summary>One unit, rounded down: <c>3 minutes</c>, <c>2 days</c>.</summary>
    public static string Describe(TimeSpan age) => age switch
    {
        { TotalMinutes: < 1 } => "less than a minute",
        { TotalHours: < 1 } => Count((int)age.TotalMinutes, "minute"),
        { TotalDays: < 1 } => Count((int)age.TotalHours, "hour"),
        _ => Count((int)age.TotalDays, "day"),
    };

    private static string Count(int count, string unit) => NumberWords.Count(count, unit, unit + "s");
}

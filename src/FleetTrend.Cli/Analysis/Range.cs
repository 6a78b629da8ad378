using FleetTrend.Statistics;

namespace FleetTrend.Cli.Analysis;

/// <summary>An interval; an end that the data do not limit is null.</summary>
internal sealed record Range(double? Lower, double? Upper)
{
    /// <summary>From an interval.</summary>
    public static Range Build(Interval interval) => new(JsonOutput.Finite(interval.Lower), JsonOutput.Finite(interval.Upper));
}

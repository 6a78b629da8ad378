using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Cli.Analysis;

/// <summary>A growth with its limits.</summary>
internal sealed record GrowthValues(double Growth, double Lower, double Upper, double PValue)
{
    /// <summary>That of a fit.</summary>
    public static GrowthValues Build(GrowthFit fit) => new(fit.Growth.Value, fit.Growth.Interval.Lower, fit.Growth.Interval.Upper, fit.PValue);
}

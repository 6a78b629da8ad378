using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Cli.Analysis;

/// <summary>A fitted power law; the unbiased exponent is null where it is not defined.</summary>
internal sealed record PowerLawValues(double Exponent, double? ExponentUnbiased, double Scale, PowerLawIntervals Intervals)
{
    /// <summary>From a fit.</summary>
    public static PowerLawValues Build(PowerLawProcess fit) => new(
        fit.Exponent, fit.ExponentUnbiased.IsEstimated ? fit.ExponentUnbiased.Value : null, fit.Scale,
        new PowerLawIntervals(
            Range.Build(fit.ExponentInterval), Range.Build(fit.ScaleInterval),
            fit.IntervalMethod == PowerLawInterval.ExactChiSquare ? "exact chi-square" : "profile likelihood", fit.ExponentInterval.Confidence));
}

using MathNet.Numerics;

namespace FleetTrend.Statistics.Recurrences;

/// <summary>Whether a power law describes counts between looks: squared gaps over expected counts.</summary>
/// <param name="Statistic">The sum over spans of (count - expected)^2 / expected.</param>
/// <param name="DegreesOfFreedom">Spans less two.</param>
/// <param name="PValue">Chance of at least this statistic were the power law true, by chi-square.</param>
/// <param name="SmallestExpected">Smallest expected count: below about five, join spans before the chance is taken at its word.</param>
public sealed record GroupedGoodnessOfFit(double Statistic, int DegreesOfFreedom, double PValue, double SmallestExpected)
{
    /// <summary>The test of the fit by maximum likelihood.</summary>
    /// <param name="intervals">The spans between looks, three or more.</param>
    /// <returns>The test; the reasons of <see cref="PowerLawProcess.FitCounts"/>; <see cref="NotEstimableKind.NoInformation"/> below three spans.</returns>
    /// <remarks>Source: MIL-HDBK-189 (1981) appendix C, grouped data.</remarks>
    public static Outcome<GroupedGoodnessOfFit> Test(IReadOnlyList<CountInterval> intervals) =>
        PowerLawProcess.FitCounts(intervals).Then<GroupedGoodnessOfFit>(fit =>
        {
            var freedom = intervals.Count - 2;
            if (freedom < 1)
                return new NotEstimable(NotEstimableKind.NoInformation, fit.Events, "Two spans fit any power law: the test needs three.");
            double[] expected = [.. intervals.Select(i => fit.MeanCount(i.Stop) - fit.MeanCount(i.Start))];
            var statistic = intervals.Zip(expected).Sum(p => (p.First.Events - p.Second) * (p.First.Events - p.Second) / p.Second);
            return new GroupedGoodnessOfFit(
                statistic, freedom, SpecialFunctions.GammaUpperRegularized(freedom / 2.0, statistic / 2), expected.Min());
        });
}

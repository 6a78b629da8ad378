using FleetTrend.Statistics.Lives;

namespace FleetTrend.Simulations;

/// <summary>Two groups of lives found failed at looks, one shape shared; the second lives a quarter less long.</summary>
internal static class GroupStudies
{
    private const double Ratio = 0.75;

    private const string FewFailures =
        "few failures: the chi-square limit of the likelihood ratio is an approximation; more lives are the remedy, no better interval is known";

    public static IEnumerable<Study> All => new[] { 20, 60, 300 }.Select(ScaleRatio);

    private static Study ScaleRatio(int lives) => new()
    {
        Quantity = "ratio of scales",
        Setting = $"two groups of {lives} lives as above, the second of {Ratio} times the scale",
        Method = "one shape for both, profile likelihood",
        Reason = FewFailures,
        Draw = random =>
        {
            var (first, second) = (LookedAtLives.Draw(random, lives), LookedAtLives.Draw(random, lives, Ratio * LookedAtLives.Scale));
            return CommonShapeFit.Fit(LifeDistribution.Weibull, [first, second]).TryGetValue(out var fit)
                ? [(fit.ScaleRatio(1, 0).Interval, Ratio)]
                : [];
        },
    };
}

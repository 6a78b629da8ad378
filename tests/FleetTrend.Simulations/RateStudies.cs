using FleetTrend.Statistics;
using FleetTrend.Statistics.Norms;
using FleetTrend.Statistics.Rates;

namespace FleetTrend.Simulations;

/// <summary>Rates, rate ratios and posterior ratios.</summary>
internal static class RateStudies
{
    private const string Discrete =
        "exact limits hold at every mean, so for few events they hold more often than stated: counts come in steps";

    private const string AllAlike =
        "all alike: every true ratio is one, in the middle of what shrinkage expects, so it is held more often than stated; no better one is known";

    private const string LawTakenAsKnown =
        "the distribution is itself estimated, and on the boundary there is no interval at all; the distribution integrated over, uniform shrinkage, is the better one";

    private const string SmallSpread =
        "a spread so small that it is hard to tell from none pulls ratios towards one; the distribution integrated over, uniform shrinkage, is the better one";

    private const string FewAircraft =
        "few aircraft that differ little: the prior allows for more difference than there is, so it holds more often than stated; half-Cauchy is the nearer one";

    public static IEnumerable<Study> All =>
    [
        .. new[] { 2.0, 8, 30, 200 }.Select(Rate),
        .. new[] { 12, 30, 60 }.SelectMany(units => new[] { 3.0, 10, double.PositiveInfinity }
            .SelectMany(shape => new[]
            {
                Posterior(units, shape, RatePrior.UniformShrinkage), Posterior(units, shape, RatePrior.Weak), Posterior(units, shape, null),
            })),
    ];

    private static Study Rate(double mean) => new()
    {
        Quantity = "rate",
        Setting = $"{mean} events expected in 1,000 h, the mean itself varied by a fifth either way",
        Method = "exact (Garwood)",
        Reason = mean < 100 ? Discrete : null,
        Draw = random =>
        {
            var truth = mean * Draws.Between(random, 0.8, 1.2);
            var count = Draws.Count(random, truth);
            return [(RateEstimate.Estimate(count, 1000).Value.Interval.Times(1000), truth)];
        },
    };

    /// <summary>
    /// Expected events from 1 to 12 per unit; truth is each unit's own rate over the mean. Without a prior the distribution is
    /// the fitted one.
    /// </summary>
    private static Study Posterior(int units, double shape, RatePrior? prior) => new()
    {
        Quantity = "posterior ratio",
        Setting = $"{units} aircraft, 1 to 12 events expected each, " + (double.IsInfinity(shape) ? "all alike" : $"frailty shape {shape}"),
        Method = prior is null ? "distribution of rates taken as known"
            : "distribution of rates integrated over, " + (prior == RatePrior.Weak ? "half-Cauchy" : "uniform shrinkage"),
        Share = prior is null ? 1 : 0.4,
        Reason = double.IsInfinity(shape) ? AllAlike
            : prior is null ? LawTakenAsKnown
            : prior == RatePrior.Weak ? SmallSpread
            : FewAircraft,
        Draw = random =>
        {
            var (counts, truth) = (new CountExposure[units], new double[units]);
            for (var i = 0; i < units; i++)
            {
                var expected = Draws.Between(random, 1, 12);
                truth[i] = Draws.Frailty(random, shape);
                counts[i] = new CountExposure(Draws.Count(random, truth[i] * expected), expected);
            }
            return prior is null ? PlugIn(counts, truth) : Integrated(counts, truth, prior);
        },
    };

    private static IEnumerable<(Interval, double)> Integrated(CountExposure[] counts, double[] truth, RatePrior prior) =>
        HierarchicalRates.Estimate(counts, prior: prior).TryGetValue(out var rates)
            ? rates.Units.Select((u, i) => (u.RatioInterval, truth[i]))
            : [];

    private static IEnumerable<(Interval, double)> PlugIn(CountExposure[] counts, double[] truth) =>
        GammaPoissonFit.Fit(counts).TryGetValue(out var fit) && !fit.NoExtraVariation
            ? counts.Select((c, i) => (fit.Posterior(c).Value.Interval.Times(1 / fit.Mean), truth[i]))
            : [];

    private static Interval Times(this Interval interval, double factor) =>
        new(interval.Lower * factor, interval.Upper * factor, interval.Confidence);
}

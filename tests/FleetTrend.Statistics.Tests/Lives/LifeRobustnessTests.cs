using System.Diagnostics;
using CsCheck;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

/// <summary>An answer or a typed reason, never NaN, never endless, whatever the lives.</summary>
public sealed class LifeRobustnessTests
{
    private static readonly Life Good = Life.GoodAt(500);

    public static TheoryData<string, Life[], NotEstimableKind> Degenerate => new()
    {
        { "no lives", [], NotEstimableKind.NothingObserved },
        { "no failure", [Good, Good], NotEstimableKind.NoEvents },
        { "all tied", [Life.FailedAt(100, 0, 9)], NotEstimableKind.NoFiniteMaximum },
        { "one failure, the oldest", [Life.FailedAt(600), Good], NotEstimableKind.NoFiniteMaximum },
        { "all failed in one interval", [new Life(100, 200, 0, 20)], NotEstimableKind.NoFiniteMaximum },
        { "one age fits all", [new Life(100, 200), new Life(150, 400), Life.GoodAt(120)], NotEstimableKind.NoFiniteMaximum },
        { "one look, at one age", [new Life(0, 200, 0, 3), Life.GoodAt(200, 0, 5)], NotEstimableKind.NoFiniteMaximum },
        { "all failed before the first look", [new Life(0, 100), new Life(0, 200)], NotEstimableKind.NoFiniteMaximum },
        { "the young failed and the old did not", [new Life(0, 100, 0, 5), Life.GoodAt(100), Life.GoodAt(900, 0, 50)], NotEstimableKind.NoFiniteMaximum },
    };

    // By hand: in each case the likelihood rises for ever, or there is nothing to rise.
    [Theory]
    [MemberData(nameof(Degenerate))]
    public void Degenerate_lives_give_a_reason(string what, Life[] lives, NotEstimableKind kind)
    {
        foreach (var distribution in (LifeDistribution[])[LifeDistribution.Weibull, LifeDistribution.Lognormal, LifeDistribution.Loglogistic])
        {
            var outcome = LifeFit.Fit(distribution, lives);
            Assert.False(outcome.IsEstimated, $"{what}: {distribution} gave {(outcome.IsEstimated ? outcome.Value.Model : null)}");
            Assert.Equal(kind, outcome.Reason.Kind);
        }
    }

    // By hand: one failure at 300 and one life good at 500. Profile over the scale: l(b) = ln b - ln(1 + (5/3)^b) + constant.
    [Fact]
    public void One_failure_and_an_older_life_is_enough_for_a_maximum()
    {
        var fit = LifeFit.Fit(LifeDistribution.Weibull, [Life.FailedAt(300), Good]).Value;
        var ratio = Math.Log(500 / 300.0);
        var shape = fit.Shape.Value;
        Assert.Equal(1 / shape, ratio / (1 + Math.Exp(-shape * ratio)), 8);
        Assert.True(fit.Shape.Interval.Lower < shape && fit.Shape.Interval.Upper > shape);
    }

    // By hand: as the shape goes to nothing the distribution has half the lives fail at once and half never. Four of eight failed, each seen once, so
    // that this has log-likelihood 8 ln(1/2), less than 1.92 below the maximum: no limit of any age, however small or large.
    [Fact]
    public void Single_looks_at_eight_lives_do_not_limit_the_scale()
    {
        Life[] lives =
        [
            Life.GoodAt(2), Life.GoodAt(176), Life.GoodAt(294), Life.GoodAt(332),
            new Life(0, 194), new Life(0, 365), new Life(0, 120), new Life(0, 153),
        ];
        foreach (var distribution in (LifeDistribution[])[LifeDistribution.Weibull, LifeDistribution.Lognormal, LifeDistribution.Loglogistic])
        {
            var fit = LifeFit.Fit(distribution, lives).Value;
            Assert.InRange(fit.LogLikelihood, 8 * Math.Log(0.5), (8 * Math.Log(0.5)) + 1.92);
            Assert.Equal((0, double.PositiveInfinity), (fit.Scale.Interval.Lower, fit.Scale.Interval.Upper));
            Assert.Equal((0, double.PositiveInfinity), (fit.Quantile(0.5).Interval.Lower, fit.Quantile(0.5).Interval.Upper));
            Assert.Equal(0, fit.Shape.Interval.Lower);
        }
    }

    // By hand: with late entry and a shape b next to nothing the distribution is survival (entry/t)^k, whose likelihood stays within the interval here.
    [Fact]
    public void Late_entries_that_fit_a_power_of_age_do_not_limit_the_shape_from_below()
    {
        Life[] lives =
        [
            new(2062.76, 2063.12, 1.07342), new(0, 0.357807), new(0, 0.357807), new(240.804, 241.162, 3.22026), new(7.15614, 7.51395, 2.86246),
            new(28.9824, 29.3402, 1.43123), new(49.7352, 50.093, 2.86246), new(33.6339, 33.9917, 5.0093),
        ];
        double[] slopes = [.. Enumerable.Range(1, 400).Select(k => 0.005 * k)];
        var power = slopes.Max(k => lives.Where(l => l.Entry > 0).Sum(l =>
            Math.Log(Math.Pow(l.Entry / l.Lower, k) - Math.Pow(l.Entry / l.Upper, k))));
        foreach (var distribution in (LifeDistribution[])[LifeDistribution.Weibull, LifeDistribution.Lognormal])
        {
            var fit = LifeFit.Fit(distribution, lives).Value;
            Assert.InRange(power, fit.LogLikelihood - 1.92, fit.LogLikelihood);
            Assert.Equal((0, double.PositiveInfinity), (fit.Shape.Interval.Lower, fit.Sigma.Interval.Upper));
        }
    }

    // An exact failure among interval-censored ones, ties, extreme shapes and ages.
    [Fact]
    public void Any_lives_give_an_answer_or_a_reason()
    {
        var ages = Gen.OneOf(Gen.Double[0.1, 10], Gen.Double[1, 3000], Gen.Double[10, 1e5], Gen.Int[1, 3].Select(i => 100.0 * i));
        var life =
            from x in ages
            from y in ages
            from z in ages
            from kind in Gen.Int[0, 4]
            let sorted = new[] { x, y, z }.Order().ToArray()
            select kind switch
            {
                0 => Life.FailedAt(sorted[1]),
                1 => Life.GoodAt(sorted[1], sorted[0]),
                2 when sorted[2] > sorted[0] => Life.FailedBetween(sorted[1], sorted[2], sorted[0]),
                3 => Life.FailedBetween(0, sorted[2]),
                _ => sorted[1] > sorted[0] ? Life.FailedAt(sorted[1], sorted[0]) : Life.GoodAt(sorted[1]),
            };
        life.List[1, 12].Sample(AnswersOrReasons, iter: 40);
    }

    [Fact]
    public void Shapes_from_flat_to_steep_and_ages_from_minutes_to_decades_are_fitted() =>
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Double[0.3, 12], Gen.Double[-1, 5]).Sample(
            (seed, shape, logScale) =>
            {
                var scale = Math.Pow(10, logScale);
                var fit = LifeFit.Fit(LifeDistribution.Weibull, SimulatedLives.Make(seed, 400, shape, scale)).Value;

                // Within six standard errors of the truth (normal theory; 1 in 10^9).
                Assert.InRange(Math.Log(fit.Shape.Value / shape) / Math.Sqrt(fit.LogCovariance.LogShape), -6, 6);
                Assert.InRange(Math.Log(fit.Scale.Value / scale) / Math.Sqrt(fit.LogCovariance.LogScale), -6, 6);
            },
            iter: 30);

    [Fact]
    public void A_million_rows_are_fitted_in_seconds()
    {
        var clock = Stopwatch.StartNew();
        var lives = SimulatedLives.Make(1, 1_000_000, 2.2, 900);
        var simulated = clock.Elapsed;
        var fit = LifeFit.Fit(LifeDistribution.Weibull, lives).Value;
        var estimate = TurnbullEstimate.Estimate([.. lives.Take(20_000)]).Value;
        Assert.True(clock.Elapsed - simulated < TimeSpan.FromSeconds(60));
        Assert.InRange(fit.Shape.Value, 2.18, 2.22);
        Assert.InRange(estimate.CdfBounds(900).Least, 0.60, 0.66);
    }

    private static void AnswersOrReasons(List<Life> lives)
    {
        foreach (var distribution in Enum.GetValues<LifeDistribution>())
        {
            if (!LifeFit.Fit(distribution, lives).TryGetValue(out var fit)) continue;
            AssertNumbers(
                fit.Scale.Value, fit.Shape.Value, fit.Scale.StandardError, fit.Shape.StandardError, fit.LogLikelihood, fit.Aic);
            Assert.True(fit.Scale.Interval.Contains(fit.Scale.Value) && fit.Shape.Interval.Contains(fit.Shape.Value));
            foreach (var estimate in (IntervalEstimate[])
                     [fit.Quantile(0.1), fit.Survival(150), fit.Cdf(150), fit.ConditionalFailure(150, 100)])
            {
                AssertNumbers(estimate.Value, estimate.Interval.Lower, estimate.Interval.Upper);
            }
        }

        if (!TurnbullEstimate.Estimate(lives).TryGetValue(out var turnbull)) return;
        AssertNumbers(turnbull.LogLikelihood, turnbull.Gap);
        Assert.Equal(1, turnbull.Masses.Sum(m => m.Mass), 1e-9);
        Assert.Equal(1, turnbull.Masses[^1].Cdf);
    }

    // Definition: at any age a probability with limits around it, far beyond the scale of a steep distribution too, where survival itself is 0.
    [Theory]
    [InlineData(LifeDistribution.Weibull)]
    [InlineData(LifeDistribution.Lognormal)]
    [InlineData(LifeDistribution.Loglogistic)]
    public void Conditional_failure_is_a_number_at_every_age(LifeDistribution distribution)
    {
        Life[][] sets =
        [
            [Life.FailedAt(100), Life.FailedAt(101)],
            [Life.FailedAt(500), Life.GoodAt(600, 0, 50), Life.GoodAt(100)],
            [new Life(600, 700, 500), new Life(800, 900, 600), Life.GoodAt(1000, 700), Life.GoodAt(1200, 100)],
        ];
        foreach (var lives in sets)
        {
            if (!LifeFit.Fit(distribution, lives).TryGetValue(out var fit)) continue;
            foreach (var age in (double[])[0, 0.1, 50, 1000, 5000, 1e5])
            {
                var estimate = fit.ConditionalFailure(age, 100);
                Assert.InRange(estimate.Value, 0, 1);
                Assert.InRange(estimate.Value, estimate.Interval.Lower - 1e-12, estimate.Interval.Upper + 1e-12);
            }
        }
    }

    // Definition: far beyond its scale a loglogistic survival falls like age^-shape, so that the limits are those of the shape.
    [Theory]
    [InlineData(1e5, 1e-6)]
    [InlineData(1e8, 1e-7)]
    public void Loglogistic_limits_far_out_are_those_of_the_shape(double age, double tolerance)
    {
        var fit = LifeFit.Fit(LifeDistribution.Loglogistic, [new Life(100, 200), new Life(200, 300), Life.GoodAt(350)]).Value;
        Assert.Equal(1 - Math.Pow(1.1, -fit.Shape.Interval.Upper), fit.ConditionalFailure(age, age / 10).Interval.Upper, tolerance);
        Assert.Equal(1 - Math.Pow(1.1, -fit.Shape.Interval.Lower), fit.ConditionalFailure(age, age / 10).Interval.Lower, 0.01);
    }

    private static void AssertNumbers(params double[] values) => Assert.DoesNotContain(values, double.IsNaN);
}

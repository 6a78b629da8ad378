using FleetTrend.Statistics.Decisions;
using FleetTrend.Statistics.Lives;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Tests.Decisions;

/// <summary>A count that was foreseen beside what was found, with the counts that the forecast leaves open.</summary>
public sealed class CountScoreTests
{
    // By hand: mean 1 and variance 2 is the geometric law, P(at least k) = 2^-k. Mean 2 and variance 1 is binomial, four trials at one half: P(0) = 1/16.
    [Fact]
    public void A_count_has_its_mean_and_variance()
    {
        var geometric = CountDistribution.WithMoments(1, 2);
        Assert.All(Enumerable.Range(0, 20), k => Assert.Equal(Math.Pow(2, -k), geometric.AtLeast(k), 12));
        Assert.Equal(1 / 16.0, CountDistribution.WithMoments(2, 1).AtMost(0), 12);
        Assert.Equal(1, CountDistribution.WithMoments(0, 3).AtMost(0));
    }

    [Theory] // Against another library: Math.NET's negative binomial; its r = mean^2/(variance - mean), p = mean/variance.
    [InlineData(0.3, 0.4)]
    [InlineData(5, 9)]
    [InlineData(40, 55)]
    [InlineData(300, 1_500)]
    public void A_count_of_varying_mean_is_negative_binomial(double mean, double variance)
    {
        var (ours, other) = (CountDistribution.WithMoments(mean, variance), new NegativeBinomial(mean * mean / (variance - mean), mean / variance));
        for (var k = 0; k < mean + (5 * Math.Sqrt(variance)); k++)
            Assert.Equal(other.CumulativeDistribution(k), ours.AtMost(k), 9);
    }

    [Fact] // The Poisson law between the two: P(0) = exp(-2), P(at least 5) = 0.0527 (any table).
    public void A_count_whose_variance_is_its_mean_is_poisson()
    {
        Assert.Equal(Math.Exp(-2), CountDistribution.WithMoments(2, 2).AtMost(0), 5);
        Assert.Equal(0.0527, CountDistribution.WithMoments(2, 2).AtLeast(5), 4);
    }

    // By hand: five aircraft with ten chances of a half each, all found on three of them and none on two: 30 where 25 were foreseen. Beside 6 each,
    // the squares
    // are 3 x 16 + 2 x 36 = 120, over 1 - 1/5: 150; the variance is 1.2 x 12.5 = 15: 10 times as large. With ten that do not differ: (10 + 4 x 10) / 14.
    [Fact]
    public void Aircraft_that_differ_leave_more_open()
    {
        var chances = Enumerable.Range(0, 5).SelectMany(unit => Enumerable.Range(0, 10).Select(_ => new ScoredChance(unit, 0, 0.5, 0, 0, unit < 3))).ToList();
        var score = CountScore.Compare(chances, 1).All;
        Assert.Equal((50, 25, 30), (score.Count, score.Expected, score.Found));
        Assert.Equal(50 / 14.0, score.Dispersion, 12);
        var more = StudentT.InvCDF(0, 1, 14, 0.975) / Normal.InvCDF(0, 1, 0.975);
        Assert.Equal(Limits(25, 12.5 * 50 / 14 * more * more), score.Limits(0.95));
        Assert.False(score.IsOff(0.95));
    }

    // By hand: 300 chances of 0.01 on 30 aircraft, ten each: mean 3, variance 2.97. A law whose error moves each by 0.005 moves the sum by 1.5: 2.25
    // more. Two
    // laws move halves of it by 0.75 each, independently: 1.125 more.
    [Theory]
    [InlineData(1, 2.25)]
    [InlineData(2, 1.125)]
    public void What_is_not_known_of_a_law_moves_all_its_chances(int laws, double added)
    {
        var chances = Enumerable.Range(0, 300).Select(i => new ScoredChance(i / 10, i % laws, 0.01, 0.003, 0.004, i % 100 == 0)).ToList();
        var score = CountScore.Compare(chances, 10).All;
        Assert.Equal(1, score.Dispersion);
        var more = StudentT.InvCDF(0, 1, 39, 0.975) / Normal.InvCDF(0, 1, 0.975);
        Assert.Equal(Limits(3, (2.97 * more * more) + added), score.Limits(0.95));
    }

    // By hand: two aircraft tell too little of how they differ; a coefficient of variation of a half adds 0.25 x (2^2 + 2^2) = 2 to the variance.
    [Fact]
    public void Few_aircraft_are_taken_to_differ()
    {
        var chances = Enumerable.Range(0, 400).Select(i => new ScoredChance(i % 2, 0, 0.01, 0, 0, i < 4)).ToList();
        var more = StudentT.InvCDF(0, 1, 11, 0.975) / Normal.InvCDF(0, 1, 0.975);
        Assert.Equal(Limits(4, (3.96 * more * more) + 2), CountScore.Compare(chances, 1).All.Limits(0.95));
    }

    [Fact]
    public void Groups_are_of_equal_size_the_smallest_chances_first()
    {
        var chances = Enumerable.Range(0, 40).Select(i => new ScoredChance(i % 8, 0, 0.01 * (40 - i), 0, 0, i == 0)).ToList();
        var (all, groups) = CountScore.Compare(chances, 4);
        Assert.Equal([10, 10, 10, 10], groups.Select(g => g.Count));
        Assert.Equal((0.01, 0.1), groups[0].Chances);
        Assert.Equal([0, 0, 0, 1], groups.Select(g => g.Found));
        Assert.Equal(all.Expected, groups.Sum(g => g.Expected), 12);
        Assert.Empty(CountScore.Compare([], 1).Groups);
        Assert.Equal((0, 0), CountScore.Compare([], 1).All.Limits(0.95));
    }

    // By hand: two forecasts of mean 2 and variance 6 each. Of one kind: 2 + 2 by chance, and (sqrt 4 + sqrt 4)^2 = 16 together: 20. Of two kinds: 4
    // + 4 + 4 = 12.
    [Theory]
    [InlineData("gasket", 20)]
    [InlineData("clamp", 12)]
    public void A_sum_of_forecasts_shares_what_is_not_known_of_a_kind(string second, double variance) =>
        Assert.Equal(Limits(4, variance), ForecastSum.Limits([("gasket", 2, 6), (second, 2, 6)], 0.95));

    // Binomial, ten at 0.05 (any table): P(more than 2) = 0.0115, P(more than 1) = 0.0861. Ten of one kind that miss together may all miss: one in
    // twenty times.
    [Fact]
    public void Ranges_that_hold_as_stated_miss_seldom()
    {
        Assert.Equal(2, ForecastSum.MostOutside(Enumerable.Range(0, 10).Select(i => $"kind {i}"), held: 0.95, confidence: 0.975));
        Assert.True(ForecastSum.MostOutside(Enumerable.Repeat("gasket", 10), held: 0.95, confidence: 0.975) > 4);
        Assert.Equal(0, ForecastSum.MostOutside([], 0.95, 0.975));
    }

    // The slopes of the chance against differences of the chance itself, for each family.
    [Theory]
    [InlineData(LifeDistribution.Weibull)]
    [InlineData(LifeDistribution.Lognormal)]
    public void A_chance_ahead_moves_with_its_law(LifeDistribution family)
    {
        const double Step = 1e-5;
        var law = new LifeEstimate(family, 900, 2.2, new LogCovariance(0.04, 0.09, 0.03));
        var ahead = law.ChanceAhead(300, 100);
        Assert.Equal(new LifeModel(family, 900, 2.2).ConditionalFailure(300, 100), ahead.Chance, 12);
        Assert.Equal(Chance(900 * Math.Exp(Step), 2.2) - Chance(900 * Math.Exp(-Step), 2.2), 2 * Step * ahead.OfLogScale, 9);
        Assert.Equal(Chance(900, 2.2 * Math.Exp(Step)) - Chance(900, 2.2 * Math.Exp(-Step)), 2 * Step * ahead.OfLogShape, 9);
        var (first, second) = law.Covariance.Errors(2, 3); // by hand: 4 x 0.04 + 2 x 6 x 0.03 + 9 x 0.09
        Assert.Equal(1.33, (first * first) + (second * second), 12);

        double Chance(double scale, double shape) => new LifeModel(family, scale, shape).ConditionalFailure(300, 100);
    }

    private static (int, int) Limits(double mean, double variance)
    {
        var law = new NegativeBinomial(mean * mean / (variance - mean), mean / variance);
        var (lower, upper) = (0, 0);
        while (law.CumulativeDistribution(lower) <= 0.025)
            lower++;
        while (1 - law.CumulativeDistribution(upper) > 0.025)
            upper++;
        return (lower, upper);
    }
}

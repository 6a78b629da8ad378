using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Tests.Rates;

public sealed class ScoreIntervalTests
{
    [Fact] // Counts 1 to 10 on 101 to 110, the example of R's epitools package; by formula in R.
    public void Limits_equal_the_reference()
    {
        var reference = ReferenceCase.Load("poisson-rates-with-exposure");
        var (events, exposure) = (reference.Counts("events"), reference.Column("exposure"));
        var limits = events.Select(e => ScoreInterval.Estimate(e)).ToList();
        reference.Equal(limits.Select((l, i) => l.Lower / exposure[i]), "score_lower");
        reference.Equal(limits.Select((l, i) => l.Upper / exposure[i]), "score_upper");
    }

    [Fact] // By definition the score limits lie z of their own deviations from the count.
    public void Score_limits_are_z_deviations_away()
    {
        var limits = ScoreInterval.Estimate(7, 0.9);
        Assert.Equal(1.6448536269514722, (7 - limits.Lower) / Math.Sqrt(limits.Lower), 9);
        Assert.Equal(1.6448536269514722, (limits.Upper - 7) / Math.Sqrt(limits.Upper), 9);
        Assert.Equal(0, ScoreInterval.Estimate(0).Lower);
    }

    [Fact] // Counts from none to a million: numbers in order around the count, none below zero.
    public void Limits_are_numbers_in_order() =>
        Assert.All(new[] { 0, 1, 2, 50, 1_000_000 }, events =>
        {
            var limits = ScoreInterval.Estimate(events);
            Assert.True(limits.Lower >= 0 && limits.Upper > events && (events == 0 || limits.Lower < events));
            Assert.True(double.IsFinite(limits.Upper));
        });

    [Fact]
    public void Impossible_input_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ScoreInterval.Estimate(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ScoreInterval.Estimate(1, 1));
    }
}

using FleetTrend.Statistics.Decisions;

namespace FleetTrend.Statistics.Tests.Decisions;

public sealed class ReplacementTests
{
    [Fact] // Barlow and Proschan 1965, root and direct minimisation in R.
    public void Best_age_of_a_weibull_part()
    {
        var reference = ReferenceCase.Load("age-replacement-weibull");
        var (shape, cost) = (reference.Column("shape"), reference.Column("failure_cost"));
        var found = shape.Select((s, i) => AgeReplacement.Optimum(new WeibullLife(s, reference.Parameter("scale")), 1, cost[i])).ToList();
        reference.Equal(found.Select(f => f.Age), "age");
        reference.Equal(found.Select(f => f.CostPerHour), "cost");
        reference.Equal(found.Select(f => f.RunToFailureCostPerHour), "run_to_failure");
        reference.Equal(found.Select(f => f.FailureChance), "fails");
    }

    [Theory] // Barlow and Proschan 1965: no age pays where the hazard does not rise, or where a failure costs no more.
    [InlineData(1.0, 20)]
    [InlineData(0.7, 20)]
    [InlineData(3.0, 1)]
    public void Running_to_failure_is_best(double shape, double failureCost)
    {
        var best = AgeReplacement.Optimum(new WeibullLife(shape, 900), 1, failureCost);
        Assert.True(best.RunToFailure);
        Assert.Equal(failureCost / new WeibullLife(shape, 900).Mean, best.CostPerHour, 12);
    }

    [Theory] // By inversion of IEC 61649's conditional probability: the chance over the wait is the risk.
    [InlineData(2.5, 0)]
    [InlineData(2.5, 600)]
    [InlineData(0.6, 300)]
    public void Longest_wait_has_exactly_the_risk(double shape, double age)
    {
        var life = new WeibullLife(shape, 400);
        var wait = LookInterval.Longest(life, age, 0.05);
        Assert.Equal(0.05, life.FailsWithin(age, wait), 12);
        Assert.Equal(wait + 25, LookInterval.Longest(life, age, 0.05, 25), 9);
    }

    [Theory] // The worst of equal intervals meets the risk and none exceeds it.
    [InlineData(2.5)]
    [InlineData(1.0)]
    [InlineData(0.6)]
    public void Longest_equal_interval(double shape)
    {
        var life = new WeibullLife(shape, 400);
        var interval = LookInterval.LongestEqual(life, 1000, 0.05);
        var starts = Enumerable.Range(0, 1001).Select(k => (1000 - interval) * k / 1000);
        Assert.Equal(0.05, starts.Max(a => life.FailsWithin(a, interval)), 9);
    }

    [Fact] // Weibull 2.5, 400 h: P(200 h more | age 600) survives 0.0550, a new part 0.838 (arithmetic in R).
    public void Conditional_chances()
    {
        var life = new WeibullLife(2.5, 400);
        Assert.Equal(0.0550, 1 - life.FailsWithin(600, 200), 4);
        Assert.Equal(0.838, 1 - life.FailsWithin(0, 200), 3);
        Assert.Equal(354.9, life.Mean, 1);
    }
}

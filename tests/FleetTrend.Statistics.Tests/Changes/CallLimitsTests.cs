using FleetTrend.Statistics.Changes;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace FleetTrend.Statistics.Tests.Changes;

public sealed class CallLimitsTests
{
    private static readonly double[] Allowed = [1.0 / 50, 5.0 / 50];

    [Fact]
    public void The_same_panel_and_seed_give_the_same_limits()
    {
        var panel = Fleet(1);
        var spread = RateSpread.Estimate(panel);
        var first = CallLimits.Simulate([panel], [spread], new ChangePrior(), Allowed, 1000, 5);
        var again = CallLimits.Simulate([panel], [spread], new ChangePrior(), Allowed, 1000, 5);
        var other = CallLimits.Simulate([panel], [spread], new ChangePrior(), Allowed, 1000, 6);
        Assert.Equal(first.Tiers, again.Tiers);
        Assert.NotEqual(first.Tiers[0].LogLimit, other.Tiers[0].LogLimit);
    }

    [Fact] // What is stated: at most the allowed calls, the rarer tier the higher limit.
    public void Limits_keep_to_the_calls_allowed()
    {
        var panel = Fleet(2);
        var limits = CallLimits.Simulate([panel], [RateSpread.Estimate(panel)], new ChangePrior(), Allowed, 3000);
        Assert.All(limits.Tiers, t => Assert.InRange(t.PerYear, 0.8 * t.AllowedPerYear, t.AllowedPerYear));
        Assert.True(limits.Tiers[0].LogLimit > limits.Tiers[1].LogLimit);
    }

    [Fact] // Two classes of the same units: the calls of both together, so that each has a higher limit than alone.
    public void Classes_share_the_calls_allowed()
    {
        var (one, two) = (Fleet(3), Fleet(4));
        var (a, b) = (RateSpread.Estimate(one), RateSpread.Estimate(two));
        var alone = CallLimits.Simulate([one], [a], new ChangePrior(), Allowed, 3000);
        var both = CallLimits.Simulate([one, two], [a, b], new ChangePrior(), Allowed, 3000);
        Assert.Equal(alone.UnitYears, both.UnitYears);
        Assert.All(alone.Tiers.Zip(both.Tiers), t => Assert.True(t.Second.LogLimit > t.First.LogLimit));
        Assert.All(both.Tiers, t => Assert.InRange(t.PerYear, 0, t.AllowedPerYear));
    }

    [Fact] // 30 fleets of 30 aircraft over three years, drawn apart from the limits' own simulation: 54 flags and 270 watches are allowed.
    public void Other_ordinary_fleets_have_no_more_calls_than_stated()
    {
        var prior = new ChangePrior();
        var (calls, years) = (new int[2], 0.0);
        for (var fleet = 0; fleet < 30; fleet++)
        {
            var panel = Fleet(100 + fleet);
            var spread = RateSpread.Estimate(panel);
            var limits = CallLimits.Simulate([panel], [spread], prior, Allowed, 2000, fleet);
            var watch = new ChangeWatch(panel, spread, prior);
            years += panel.UnitYears;
            for (var tier = 0; tier < 2; tier++)
                calls[tier] += Enumerable.Range(0, panel.Units.Count).Sum(u => watch.Calls(u, limits.Tiers[tier].LogLimit, Math.Log(prior.LowerLine)).Count);
        }

        // Three standard errors of the count, and of a tenth for the limits' own simulation.
        Assert.All(Allowed.Zip(calls), t => Assert.InRange(t.Second, 0.5 * t.First * years, t.First * years + 3 * Math.Sqrt(t.First * years)));
    }

    [Fact] // Rule of three: of 3,000 unit-years, 1,000 are the most that no call at all can stand for.
    public void Chances_are_capped_by_what_was_simulated()
    {
        var panel = Fleet(2);
        var limits = CallLimits.Simulate([panel], [RateSpread.Estimate(panel)], new ChangePrior(), Allowed, 3000);
        var (years, isCapped) = limits.YearsPerFalseCall(1000);
        Assert.True(isCapped);
        Assert.Equal(limits.UnitYears / 3, years);
        var (atFlag, flagIsCapped) = limits.YearsPerFalseCall(limits.Tiers[0].LogLimit);
        Assert.False(flagIsCapped);
        Assert.Equal(1 / limits.Tiers[0].PerYear, atFlag, 9);
    }

    [Fact]
    public void Without_anything_watched_there_is_no_limit()
    {
        var limits = CallLimits.Simulate([], [], new ChangePrior(), Allowed);
        Assert.All(limits.Tiers, t => Assert.Equal(double.PositiveInfinity, t.LogLimit));
    }

    [Fact] // Truth: shape 4; bunches of a geometric law with 0.3 for one more have variance over mean (1 + 0.3) / (1 - 0.3) = 1.857.
    public void Spread_and_bunches_are_found_again()
    {
        var single = RateSpread.Estimate(Fleet(7, 400, 4));
        Assert.InRange(single.Shape, 3, 5.5);
        Assert.InRange(single.Dispersion, 1, 1.05);
        var bunched = RateSpread.Estimate(Fleet(8, 400, 4, 0.3));
        Assert.InRange(bunched.Shape, 2.5, 7);
        Assert.InRange(bunched.Dispersion, 1.7, 2.0);
        Assert.InRange(bunched.SameLocation, 0.9, 1);
    }

    // Twelve locations of 3.6 findings per 1,000 h in all, 470 h a year, three years in periods of 28 days, a look in every third.
    private static WatchedPanel Fleet(int seed, int aircraft = 30, double shape = 8, double another = 0)
    {
        const int periods = 39;
        var random = new MersenneTwister(seed, threadSafe: false);
        var names = Enumerable.Range(1, 12).Select(l => $"{l}").ToList();
        var scopes = ChangeScope.Spread("whole", names, [("left", [0, 1, 2, 3, 4, 5]), ("right", [6, 7, 8, 9, 10, 11])]);
        var units = Enumerable.Range(0, aircraft).Select(u =>
        {
            var level = Gamma.Sample(random, shape, shape);
            const double hours = 3 * 470 * 28 / 365.25;
            var exposure = Enumerable.Range(0, periods).Select(p => Enumerable.Repeat(p % 3 == u % 3 ? hours : 0, 12).ToArray()).ToList();
            var findings = new List<UnitFinding>();
            for (var p = u % 3; p < periods; p += 3)
            {
                for (var n = Poisson.Sample(random, level * 0.0036 * hours * (1 - another)); n > 0; n--)
                {
                    var location = random.Next(12);
                    do
                    {
                        findings.Add(new UnitFinding(p, location));
                    }
                    while (random.NextDouble() < another);
                }
            }

            return new WatchedUnit($"{u}", 0, exposure, findings);
        });
        return new WatchedPanel(periods, 28 / 365.25, scopes, [.. units]);
    }
}

using FleetTrend.Statistics.Monitoring;

namespace FleetTrend.Statistics.Tests.Monitoring;

public sealed class BernoulliCusumTests
{
    [Theory] // Constructed; weights of Steiner, Cook, Farewell and Treasure 2000 in R.
    [InlineData("up", 2)]
    [InlineData("down", 0.5)]
    public void Weights_and_path(string way, double ratio)
    {
        var reference = ReferenceCase.Load("bernoulli-cusum");
        var outcomes = reference.Counts("happened").Zip(reference.Column("chance"), (h, c) => (h == 1, c)).ToList();
        var cusum = new BernoulliCusum(ratio, 3);
        reference.Equal(outcomes.Select(o => cusum.Weight(o.Item1, o.c)), way, "weight");
        var steps = cusum.Run(outcomes);
        reference.Equal(steps.Select(s => s.Sum), way, "path");
        Assert.Equal(ratio > 1, steps[^1].Signals);
        Assert.Equal(outcomes.Sum(o => (o.Item1 ? 1 : 0) - o.c), steps[^1].Excess, 12);
    }

    [Fact]
    public void Impossible_watches_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new BernoulliCusum(1, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => new BernoulliCusum(2, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new BernoulliCusum(2, 3).Run([(true, 1)]));
    }
}

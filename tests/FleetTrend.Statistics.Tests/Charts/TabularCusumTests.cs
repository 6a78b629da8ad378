using FleetTrend.Statistics.Charts;

namespace FleetTrend.Statistics.Tests.Charts;

public sealed class TabularCusumTests
{
    [Fact] // NIST/SEMATECH e-Handbook 6.3.2.3: both printed columns, first signal at observation 14.
    public void Nist_table()
    {
        var reference = ReferenceCase.Load("nist-6.3.2.3-cusum");
        var chart = new TabularCusum(reference.Parameter("target"), reference.Parameter("allowance"), reference.Parameter("limit"));
        var steps = chart.Run(reference.Column("value"));
        reference.Equal(steps.Select(s => s.Upper), "upper");
        reference.Equal(steps.Select(s => s.Lower), "lower");
        reference.Equal(1 + steps.ToList().FindIndex(s => s.Signals), "first_signal");
        reference.Equal(steps.Count(s => s.Signals), "signals");
        Assert.All(steps.Zip(reference.PublishedAll("upper")), p => Assert.Equal(p.Second, p.First.Upper, 0.0051));
        Assert.All(steps.Zip(reference.PublishedAll("lower")), p => Assert.Equal(p.Second, p.First.Lower, 0.0051));
    }

    [Fact] // By hand: both sums start at 2 and lose half the way and back: 2 + 1 - 0.5, 2 - 1 - 0.5.
    public void Head_start()
    {
        var step = new TabularCusum(10, 0.5, 4).Run([11], headStart: 2)[0];
        Assert.Equal((2.5, 0.5, false), (step.Upper, step.Lower, step.Signals));
    }

    [Fact]
    public void Impossible_charts_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new TabularCusum(double.NaN, 0.5, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TabularCusum(0, -0.5, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TabularCusum(0, 0.5, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TabularCusum(0, 0.5, 4).Run([double.NaN]));
    }
}

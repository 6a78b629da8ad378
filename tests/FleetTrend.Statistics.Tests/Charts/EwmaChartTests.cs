using FleetTrend.Statistics.Charts;

namespace FleetTrend.Statistics.Tests.Charts;

public sealed class EwmaChartTests
{
    [Fact] // NIST/SEMATECH e-Handbook 6.3.2.4: twenty printed averages, limits 52.5884 and 47.4115, none outside.
    public void Nist_table()
    {
        var reference = ReferenceCase.Load("nist-6.3.2.4-ewma");
        var chart = new EwmaChart(
            reference.Parameter("target"), reference.Parameter("deviation"), reference.Parameter("weight"), reference.Parameter("width"));
        var steps = chart.Run(reference.Column("value"));
        reference.Equal(steps.Select(s => s.Average), "average");
        reference.Equal(chart.UpperLimit, "upper_limit");
        reference.Equal(chart.LowerLimit, "lower_limit");
        reference.Equal(steps.Select(s => s.UpperLimit), "upper_exact");
        reference.Equal(steps.Select(s => s.LowerLimit), "lower_exact");
        reference.Equal(steps.Count(s => s.Average > chart.UpperLimit || s.Average < chart.LowerLimit), "outside_long_run");
        Assert.All(steps.Zip(reference.PublishedAll("average")), p => Assert.Equal(p.Second, p.First.Average, 0.0051));
        Assert.Equal(reference.Published("upper_limit"), chart.UpperLimit, 1e-4);
        Assert.Equal(reference.Published("lower_limit"), chart.LowerLimit, 1e-4);
    }

    [Fact] // By definition: with weight one it is a chart of single values at three deviations.
    public void Weight_one_is_a_chart_of_single_values()
    {
        var steps = new EwmaChart(5, 2, 1).Run([5, 11.5, -0.5]);
        Assert.Equal([false, true, false], steps.Select(s => s.Signals));
        Assert.All(steps, s => Assert.Equal((-1.0, 11.0), (s.LowerLimit, s.UpperLimit)));
    }

    [Fact]
    public void Impossible_charts_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new EwmaChart(0, 0, 0.2));
        Assert.Throws<ArgumentOutOfRangeException>(() => new EwmaChart(0, 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new EwmaChart(0, 1, 0.2, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new EwmaChart(0, 1, 0.2).Run([double.PositiveInfinity]));
    }
}

using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Statistics.Tests.Recurrences;

public sealed class PanelCountEstimateTests
{
    [Fact] // Simulated looks, seed 20240605; R's isoreg on the single cumulative counts.
    public void Isotonic_means_equal_isoreg()
    {
        var reference = ReferenceCase.Load("panel-counts-isotonic");
        var (unit, age, found) = (reference.Counts("unit"), reference.Column("age"), reference.Counts("found"));
        var units = Enumerable.Range(0, unit.Length).GroupBy(i => unit[i])
            .Select(g => new PanelUnit(g.Select(i => (age[i], found[i])))).ToList();
        var estimate = PanelCountEstimate.Estimate(units).Value;
        reference.Equal(estimate.Points.Select(p => p.Age), "age");
        reference.Equal(estimate.Points.Select(p => (double)p.Looks), "looks");
        reference.Equal(estimate.Points.Select(p => p.RawMean), "raw");
        reference.Equal(estimate.Points.Select(p => p.Value), "value");
        Assert.All(estimate.Points, p => Assert.True(p.Lower <= p.Value && p.Value <= p.Upper));
    }

    [Fact] // By hand: counts 3 at 100 h on one unit, 1 at 200 h on another fall; both ages take the mean, 2.
    public void Falling_means_are_pooled()
    {
        var estimate = PanelCountEstimate.Estimate([new PanelUnit([(100, 3)]), new PanelUnit([(200, 1)])]).Value;
        Assert.Equal([2.0, 2.0], estimate.Points.Select(p => p.Value));
        Assert.Equal([3.0, 1.0], estimate.Points.Select(p => p.RawMean));
    }

    [Fact] // By hand: counts between looks add up to 1, then 1 + 2.
    public void Counts_between_looks_are_added_up()
    {
        var estimate = PanelCountEstimate.Estimate([new PanelUnit([(100, 1), (200, 2)])]).Value;
        Assert.Equal([1.0, 3.0], estimate.Points.Select(p => p.Value));
        Assert.Equal(3, estimate.Events);
    }

    [Fact]
    public void Bad_looks_are_refused_and_no_unit_is_a_typed_reason()
    {
        Assert.Throws<ArgumentException>(() => new PanelUnit([]));
        Assert.Throws<ArgumentException>(() => new PanelUnit([(100, 1), (100, 0)]));
        Assert.Throws<ArgumentException>(() => new PanelUnit([(100, -1)]));
        Assert.Equal(NotEstimableKind.NothingObserved, PanelCountEstimate.Estimate([]).Reason?.Kind);
    }
}

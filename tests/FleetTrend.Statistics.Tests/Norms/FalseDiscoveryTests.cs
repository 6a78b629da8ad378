using FleetTrend.Statistics.Norms;

namespace FleetTrend.Statistics.Tests.Norms;

public sealed class FalseDiscoveryTests
{
    [Fact] // Benjamini and Hochberg 1995: fifteen p-values, exactly four rejected at 0.05; adjusted values from R's p.adjust.
    public void The_worked_example_of_1995()
    {
        var reference = ReferenceCase.Load("bh-1995");
        var p = reference.Column("p");
        var q = FalseDiscovery.QValues(p);
        reference.Equal(q, "false_discovery");
        Assert.Equal(reference.Published("rejected_false_discovery"), q.Count(v => v <= 0.05));
        reference.Equal(FalseDiscovery.Threshold(p, 0.05), "threshold");
        Assert.Equal(4, p.Count(v => v <= FalseDiscovery.Threshold(p, 0.05)));
    }

    [Fact] // R's p.adjust on the same p-values: Holm.
    public void Holm_s_adjustment_of_the_same_example()
    {
        var reference = ReferenceCase.Load("bh-1995");
        var p = reference.Column("p");
        reference.Equal(FamilyWise.Holm(p), "holm");
    }

    [Fact] // The number called at 0.05 by each adjustment, R's p.adjust.
    public void Calls_by_each_adjustment()
    {
        var reference = ReferenceCase.Load("bh-1995");
        var p = reference.Column("p");
        reference.Equal(FalseDiscovery.QValues(p).Count(v => v <= 0.05), "rejected", "false_discovery");
        reference.Equal(FamilyWise.Holm(p).Count(v => v <= 0.05), "rejected", "holm");
    }

    [Fact] // The order of the tests does not matter (definition).
    public void Order_does_not_matter()
    {
        var p = ReferenceCase.Load("bh-1995").Column("p");
        var turned = FalseDiscovery.QValues([.. p.Reverse()]);
        Assert.Equal(FalseDiscovery.QValues(p), turned.Reverse());
    }

    [Fact]
    public void No_tests_and_impossible_p_values()
    {
        Assert.Empty(FalseDiscovery.QValues([]));
        Assert.Equal(0, FalseDiscovery.Threshold([], 0.05));
        Assert.Equal(0, FalseDiscovery.Threshold([0.6, 0.9], 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => FalseDiscovery.QValues([0.2, 1.1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => FalseDiscovery.QValues([double.NaN]));
    }
}

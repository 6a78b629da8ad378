using FleetTrend.Statistics.Recurrences;
using MathNet.Numerics.Distributions;

namespace FleetTrend.Statistics.Tests.Recurrences;

/// <summary>Growth of recurring events between looks, on units that differ.</summary>
public sealed class GrowthFitTests
{
    [Theory] // R: the conditional likelihood maximised, scores and information of units by differences.
    [InlineData(GrowthLaw.LogLinear, GrowthLevels.Own, "loglinear")]
    [InlineData(GrowthLaw.PowerLaw, GrowthLevels.Common, "power")]
    public void Growth_and_its_limits_equal_R(GrowthLaw law, GrowthLevels levels, string name)
    {
        var expected = ReferenceCase.Load("growth-eight-units");
        var (unit, start, stop) = (expected.Counts("unit"), expected.Column("start"), expected.Column("stop"));
        var (exposure, events) = (expected.Column("exposure"), expected.Counts("events"));
        IReadOnlyList<IReadOnlyList<GrowthSpan>> units =
            [.. unit.Index().GroupBy(u => u.Item)
                .Select(g => (IReadOnlyList<GrowthSpan>)[.. g.Select(u => new GrowthSpan(start[u.Index], stop[u.Index], exposure[u.Index], events[u.Index]))])];
        var fit = GrowthFit.Estimate(units, law, levels).Value;
        expected.Equal(fit.Growth.Value, name, "growth");
        expected.Equal(fit.Growth.Interval.Lower, name, "lower");
        expected.Equal(fit.Growth.Interval.Upper, name, "upper");
        expected.Equal(fit.PValue, name, "p");
    }

    [Fact] // MIL-HDBK-189 (1981), appendix C: counts in spans of 20 h. Which unit had which of them does not move the exponent of a common level.
    public void The_exponent_of_grouped_counts_is_that_of_the_handbook()
    {
        var source = ReferenceCase.Load("mil-hdbk-189-grouped");
        var (start, stop, counts) = (source.Column("start"), source.Column("stop"), source.Counts("events"));
        IReadOnlyList<IReadOnlyList<GrowthSpan>> units =
            [.. Enumerable.Range(0, 4)
                .Select(u => (IReadOnlyList<GrowthSpan>)[.. counts.Select((c, i) => new GrowthSpan(start[i], stop[i], 20, (c + u) / 4))])];
        Assert.Equal(counts, Enumerable.Range(0, 5).Select(i => units.Sum(u => u[i].Events)));
        source.Equal(GrowthFit.Estimate(units, GrowthLaw.PowerLaw, GrowthLevels.Common).Value.Growth.Value, "exponent");
    }

    // By hand: two spans of one length and exposure, so that the chance of the second is p = e^g / (1 + e^g) by the log-linear law, g = ln(n2 / n1); each event
    // knows p (1 - p) of g. Units' scores are n2 - p (n1 + n2); here 4 units with (1, 3), (3, 5), (2, 4), (2, 4): p = 16/24, scores 1/3, -1/3, 0, 0.
    [Fact]
    public void Two_spans_by_hand()
    {
        var fit = GrowthFit.Estimate(Two((1, 3), (3, 5), (2, 4), (2, 4)), GrowthLaw.LogLinear, GrowthLevels.Own).Value;
        Assert.Equal(Math.Log(2), fit.Growth.Value, 9);
        var information = 24 * (2 / 3.0) * (1 / 3.0);
        var robust = Math.Sqrt((1 / 9.0 / (1 - (4 / 24.0))) + (1 / 9.0 / (1 - (8 / 24.0)))) / information;
        // 24^2 / (16 + 64 + 36 + 36) = 3.8 units: three degrees. Events that come singly are less sure of it.
        var single = 1.959963985 / Math.Sqrt(information);
        Assert.True(StudentT.InvCDF(0, 1, 3, 0.975) * robust < single);
        Assert.Equal(Math.Log(2) - single, fit.Growth.Interval.Lower, 7);
        Assert.Equal(2 * Normal.CDF(0, 1, -Math.Log(2) * Math.Sqrt(information)), fit.PValue, 9);
        Assert.Equal((24, 4), (fit.Events, fit.Units));
        // From zero to 100 h and on to 200 h the second has the chance 1 - 2^-b by the power law: b = log2(24 / 8).
        Assert.Equal(Math.Log2(3), GrowthFit.Estimate(Two((1, 3), (3, 5), (2, 4), (2, 4)), GrowthLaw.PowerLaw, GrowthLevels.Common).Value.Growth.Value, 9);
    }

    [Fact] // By hand: units with none and all of theirs late scatter far more than events that come singly; two units with nothing tell nothing of their own.
    public void Bunches_widen_the_limits()
    {
        var spread = GrowthFit.Estimate(Two((6, 0), (0, 6), (0, 6), (0, 6), (2, 0), (2, 0)), GrowthLaw.LogLinear, GrowthLevels.Own).Value;
        var even = GrowthFit.Estimate(Two((2, 4), (2, 4), (2, 4), (2, 4), (1, 1), (1, 1)), GrowthLaw.LogLinear, GrowthLevels.Own).Value;
        Assert.Equal(even.Growth.Value, spread.Growth.Value, 9);
        Assert.True(spread.Growth.Interval.Upper - spread.Growth.Value > 2 * (even.Growth.Interval.Upper - even.Growth.Value));
        Assert.True(spread.Dispersion > 3 && even.Dispersion < 1);
    }

    [Fact]
    public void Too_little_gives_the_reason()
    {
        Assert.Equal(NotEstimableKind.NothingObserved, Reason([]));
        Assert.Equal(NotEstimableKind.NoEvents, Reason(Two((0, 0), (0, 0), (0, 0), (0, 0))));
        Assert.Equal(NotEstimableKind.TooFewEvents, Reason(Two((9, 9), (9, 9), (9, 9), (0, 0))));
        Assert.Equal(NotEstimableKind.NoFiniteMaximum, Reason(Two((0, 2), (0, 3), (0, 4), (0, 2))));
        Assert.Throws<ArgumentOutOfRangeException>(() => GrowthFit.Estimate([[new GrowthSpan(-1, 1, 1, 1)]], GrowthLaw.PowerLaw, GrowthLevels.Common));
        Assert.Throws<ArgumentOutOfRangeException>(() => new GrowthSpan(1, 1, 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new GrowthSpan(0, 1, 0, 0));

        static NotEstimableKind Reason(IReadOnlyList<IReadOnlyList<GrowthSpan>> units) =>
            GrowthFit.Estimate(units, GrowthLaw.LogLinear, GrowthLevels.Own).Reason!.Kind;
    }

    // Two spans of 100 h each; by the log-linear law in hundreds.
    private static IReadOnlyList<IReadOnlyList<GrowthSpan>> Two(params (int First, int Second)[] units) =>
        [.. units.Select(u => (IReadOnlyList<GrowthSpan>)[new GrowthSpan(0, 1, 100, u.First), new GrowthSpan(1, 2, 100, u.Second)])];
}

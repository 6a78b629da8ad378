using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

public sealed class CommonShapeFitTests
{
    // R package KMsurv, data bcdeter; simulated repairs, seed 20240603: survreg with the group as factor, limits from its fits at fixed ratio.
    [Theory]
    [InlineData("breast-cosmesis-two-arms", "arm")]
    [InlineData("sim3-repairs", "method")]
    public void Two_groups_equal_survreg(string id, string column)
    {
        var source = ReferenceCase.Load(id);
        var fit = CommonShapeFit.Fit(LifeDistribution.Weibull, Groups(source, column)).Value;
        source.Equal(fit.Shape, "common_shape", "shape");
        source.Equal(1 / fit.Shape, "common_shape", "sigma");
        source.Equal(fit.ShapeStandardError, "common_shape", "se_shape");
        source.Equal(fit.Scales[0], "common_shape", "first_scale");
        source.Equal(Math.Log(fit.Scales[0]), "common_shape", "first_mu");
        source.Equal(fit.LogLikelihood, "common_shape", "loglik");
        var ratio = fit.ScaleRatio(1, 0);
        source.Equal(Math.Log(ratio.Value), "common_shape", "log_scale_ratio");
        source.Equal([Math.Log(ratio.Interval.Lower), Math.Log(ratio.Interval.Upper)], "common_shape", "log_ratio_interval");
        source.Equal(fit.LogRatioStandardError(1, 0), "common_shape", "se_log_scale_ratio");
        source.Equal(-fit.Shape * Math.Log(ratio.Value), "common_shape", "log_hazard_ratio");
        source.Equal(fit.EqualScales.Statistic, "common_shape", "lr_equal_scales");
        source.Equal(fit.EqualScales.PValue, "common_shape", "lr_equal_scales_p");
        source.Equal(fit.EqualShapes.Value.Statistic, "common_shape", "lr_equal_shapes");
        Assert.Equal(1, fit.EqualScales.DegreesOfFreedom);
    }

    // Definition: the order of the groups turns the ratio over; ages doubled in one group double its scale; exact ages too.
    [Theory]
    [InlineData(LifeDistribution.Weibull)]
    [InlineData(LifeDistribution.Lognormal)]
    [InlineData(LifeDistribution.Loglogistic)]
    public void Ratios_turn_over_and_rescale(LifeDistribution distribution)
    {
        Life[] a = [Life.FailedAt(120), Life.FailedAt(340), Life.FailedBetween(200, 300), Life.GoodAt(500), Life.FailedAt(410, 100)];
        Life[] b = [Life.FailedAt(220), Life.FailedAt(640), Life.FailedBetween(300, 500), Life.GoodAt(900), Life.FailedAt(810, 300)];
        Life[] doubled = [.. b.Select(l => new Life(2 * l.Lower, 2 * l.Upper, 2 * l.Entry))];
        var one = CommonShapeFit.Fit(distribution, [a, b]).Value;
        var (ratio, back) = (one.ScaleRatio(1, 0), one.ScaleRatio(0, 1));
        Assert.Equal(1 / ratio.Value, back.Value, 1e-9);
        Assert.Equal(1 / ratio.Interval.Upper, back.Interval.Lower, 1e-7);
        var twice = CommonShapeFit.Fit(distribution, [a, doubled]).Value;
        Assert.Equal(2 * ratio.Value, twice.ScaleRatio(1, 0).Value, 1e-7);
        Assert.Equal(2 * ratio.Interval.Lower, twice.ScaleRatio(1, 0).Interval.Lower, 1e-6);
        Assert.Equal(one.Shape, twice.Shape, 1e-8);
        Assert.True(ratio.Interval.Contains(ratio.Value));
    }

    // Definition: a group and its copy share all; with three groups of which two are the same, two scales are the same.
    [Fact]
    public void A_copy_has_ratio_one_and_tests_find_nothing()
    {
        var lives = ReferenceCase.Load("crack-inspections").Lives();
        var alone = LifeFit.Fit(LifeDistribution.Weibull, lives).Value;
        var fit = CommonShapeFit.Fit(LifeDistribution.Weibull, [lives, lives, lives]).Value;
        Assert.Equal(1, fit.ScaleRatio(2, 0).Value, 1e-9);
        Assert.Equal(alone.Shape.Value, fit.Shape, 1e-8);
        Assert.Equal(0, fit.EqualScales.Statistic, 1e-7);
        Assert.Equal(0, fit.EqualShapes.Value.Statistic, 1e-7);
        Assert.Equal(2, fit.EqualScales.DegreesOfFreedom);
        Assert.Equal(alone.Model.Quantile(0.1), fit.Model(1).Quantile(0.1), 1e-6);
    }

    [Fact]
    public void Groups_that_hold_no_shape_give_reasons()
    {
        Life[] tied = [Life.FailedAt(100), Life.GoodAt(90)];
        Life[] good = [Life.GoodAt(100)];
        Life[] spread = [Life.FailedAt(100), Life.FailedAt(300), Life.GoodAt(250)];
        Assert.Equal(NotEstimableKind.NoFiniteMaximum, CommonShapeFit.Fit(LifeDistribution.Weibull, [tied, tied]).Reason!.Kind);
        Assert.Equal(NotEstimableKind.NoEvents, CommonShapeFit.Fit(LifeDistribution.Weibull, [spread, good]).Reason!.Kind);
        Assert.Equal(NotEstimableKind.NothingObserved, CommonShapeFit.Fit(LifeDistribution.Weibull, [spread, []]).Reason!.Kind);
        var fit = CommonShapeFit.Fit(LifeDistribution.Weibull, [spread, tied]).Value;
        Assert.Equal(NotEstimableKind.NoFiniteMaximum, fit.EqualShapes.Reason!.Kind);
        Assert.Throws<ArgumentOutOfRangeException>(() => fit.ScaleRatio(1, 1));
        Assert.Throws<ArgumentException>(() => CommonShapeFit.Fit(LifeDistribution.Exponential, [spread, spread]));
        Assert.Throws<ArgumentException>(() => CommonShapeFit.Fit(LifeDistribution.Weibull, [spread]));
    }

    private static Life[][] Groups(ReferenceCase source, string column)
    {
        var values = source.Text(column);
        return [.. values.Distinct().Order(StringComparer.Ordinal).Select(v => source.Lives(i => values[i] == v))];
    }
}

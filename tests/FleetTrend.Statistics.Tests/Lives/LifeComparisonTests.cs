using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

public sealed class LifeComparisonTests
{
    // Freireich and others 1963; log-rank 16.79 is the published statistic.
    [Theory]
    [InlineData(ComparisonWeight.LogRank, "log_rank")]
    [InlineData(ComparisonWeight.PetoPeto, "peto_peto")]
    [InlineData(ComparisonWeight.Gehan, "gehan")]
    [InlineData(ComparisonWeight.TaroneWare, "tarone_ware")]
    public void Exact_lives_give_the_usual_tests(ComparisonWeight weight, string name)
    {
        var source = ReferenceCase.Load("freireich-two-arms");
        var test = LifeComparison.Compare(ByColumn(source, "group"), weight).Value;
        source.Equal(test.ChiSquare, name);
        Assert.Equal(1, test.DegreesOfFreedom);
        if (weight == ComparisonWeight.Gehan)
        {
            source.Equal(test.Difference[0], "gehan_difference");
            source.Equal(test.FirstVariance, "gehan_variance");
        }

        if (weight != ComparisonWeight.LogRank) return;
        source.Equal(test.Observed, "observed");
        source.Equal(test.Expected, "expected");
        source.Equal(test.FirstVariance, "variance");
        source.Equal(test.PValue, "p");
        Assert.Equal(source.Published("log_rank"), test.ChiSquare, 0.01);
    }

    // Klein and Moeschberger 1997, data channing.
    [Fact]
    public void Late_entry_gives_the_log_rank_written_out()
    {
        var source = ReferenceCase.Load("channing-late-entry");
        var test = LifeComparison.Compare(ByColumn(source, "group")).Value;
        Assert.Equal(source.Expected("difference"), test.Difference[0], 1e-5);
        Assert.Equal(source.Expected("chi_square"), test.ChiSquare, 1e-5);
    }

    // Sun 1996 by dense matrices in R; variance by 4000 imputations there, whose own error is about 3 percent.
    [Theory]
    [InlineData("breast-cosmesis-two-arms", "arm", "cosmesis")]
    [InlineData("sim3-repairs", "method", "repairs")]
    public void Intervals_give_the_expected_counts_and_the_imputed_variance(string id, string column, string name)
    {
        var source = ReferenceCase.Load("interval-log-rank");
        var test = LifeComparison.Compare(ByColumn(ReferenceCase.Load(id), column)).Value;
        Assert.Equal(source.Expected(name, "difference"), test.Difference[0], 1e-4);
        Assert.Equal(1, test.FirstVariance / source.Expected(name, "variance_by_imputation"), 0.1);
    }

    // Simulated with seed 20240603 and 20240601: survreg and separate fits in R.
    [Fact]
    public void Fits_apart_against_one_law_equal_the_reference()
    {
        var repairs = ReferenceCase.Load("sim3-repairs");
        var test = LifeComparison.CompareFits(LifeDistribution.Weibull, ByColumn(repairs, "method")).Value;
        repairs.Equal(test.Statistic, "lr_both_free");
        Assert.Equal(2, test.DegreesOfFreedom);
        var gaskets = ReferenceCase.Load("sim1-gaskets");
        var cylinders = LifeComparison.CompareFits(LifeDistribution.Weibull, ByColumn(gaskets, "cylinder")).Value;
        Assert.Equal(gaskets.Expected("lr_cylinders"), cylinders.Statistic, 1e-4);
        Assert.Equal(6, cylinders.DegreesOfFreedom);
        var arms = ReferenceCase.Load("breast-cosmesis-two-arms");
        arms.Equal(LifeComparison.CompareFits(LifeDistribution.Weibull, ByColumn(arms, "arm")).Value.Statistic, "lr_both_free");
    }

    // Simulated with seed 20240603: survdiff on the middles between the looks.
    [Fact]
    public void Middles_of_the_intervals_give_the_log_rank_of_survdiff()
    {
        var source = ReferenceCase.Load("sim3-repairs");
        Life[][] middles =
        [
            .. ByColumn(source, "method").Select(g => g.Select(l => l.Failed ? Life.FailedAt((l.Lower + l.Upper) / 2) : l).ToArray()),
        ];
        source.Equal(LifeComparison.Compare(middles).Value.ChiSquare, "middle_log_rank");
    }

    // By hand: a group against itself differs by nothing.
    [Fact]
    public void A_group_against_its_copy_shows_no_difference()
    {
        var lives = SimulatedLives.Make(3, 60, 2, 1000);
        var test = LifeComparison.Compare([lives, lives, lives]).Value;
        Assert.Equal(0, test.ChiSquare, 1e-9);
        Assert.Equal(1, test.PValue, 1e-9);
        Assert.Equal(2, test.DegreesOfFreedom);
    }

    [Fact]
    public void Groups_without_overlap_give_a_reason()
    {
        Assert.Equal(
            NotEstimableKind.NoInformation,
            LifeComparison.Compare([[Life.FailedAt(5), Life.GoodAt(6)], [Life.GoodAt(2), Life.GoodAt(3)]]).Reason!.Kind);
        Assert.Equal(NotEstimableKind.NoEvents, LifeComparison.Compare([[Life.GoodAt(5)], [Life.GoodAt(2)]]).Reason!.Kind);
        Assert.Throws<ArgumentException>(() => LifeComparison.Compare([[Life.FailedAt(5)]]));
    }

    private static Life[][] ByColumn(ReferenceCase source, string column)
    {
        var values = source.Text(column);
        return [.. values.Distinct().Order(StringComparer.Ordinal).Select(v => source.Lives(i => values[i] == v))];
    }
}

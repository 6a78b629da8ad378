using FleetTrend.Statistics.Charts;

namespace FleetTrend.Statistics.Tests.Charts;

public sealed class NormalRunLengthTests
{
    [Fact] // R package spc, xcusum.arl; Brook and Evans 1972, Lucas and Crosier 1982 Table 1, Vance 1986 Table 1, Waldmann 1986.
    public void Cumulative_sums()
    {
        var reference = ReferenceCase.Load("cusum-arl-normal");
        var shifts = reference.Parameters("lucas_crosier_shifts");
        reference.Equal(new[] { 0, 1.5 }.Select(m => OneSided(m, 0.5, 3)), "brook_evans");
        reference.Equal(shifts.Select(m => TwoSided(m, 0.5, 4)), "lucas_crosier");
        reference.Equal(shifts.Select(m => TwoSided(m, 0.5, 4, 2)), "lucas_crosier_head");
        reference.Equal(reference.Parameters("vance_shifts").Select(m => OneSided(m, 0, 10)), "vance");
        reference.Equal(new[] { -0.5, 0, 0.5 }.Select(m => OneSided(m, 0.5, 3)), "waldmann");
        reference.Equal(new[] { 0.0, 1 }.Select(m => TwoSided(m, 0.5, 5)), "two_sided_5");
        reference.Equal(new[] { 0.0, 1 }.Select(m => OneSided(m, 0.5, 4)), "one_sided_4");
    }

    [Theory] // The printed tables, to half a unit of their last digit (two misprints aside: see the case's note).
    [InlineData("brook_evans", 0.006)]
    [InlineData("lucas_crosier", 0.5)]
    [InlineData("lucas_crosier_head", 0.5)]
    [InlineData("vance", 0.07)]
    [InlineData("waldmann", 0.5)]
    public void Printed_cumulative_sums(string table, double last)
    {
        var reference = ReferenceCase.Load("cusum-arl-normal");
        var shifts = reference.Parameters("lucas_crosier_shifts");
        double[] found = table switch
        {
            "brook_evans" => [OneSided(0, 0.5, 3), OneSided(1.5, 0.5, 3)],
            "lucas_crosier" => [.. shifts.Select(m => TwoSided(m, 0.5, 4))],
            "lucas_crosier_head" => [.. shifts.Select(m => TwoSided(m, 0.5, 4, 2))],
            "vance" => [.. reference.Parameters("vance_shifts").Select(m => OneSided(m, 0, 10))],
            _ => [.. new[] { -0.5, 0, 0.5 }.Select(m => OneSided(m, 0.5, 3))],
        };
        Assert.All(reference.PublishedAll(table).Zip(found), p => Assert.Equal(p.First, p.Second, Math.Min(last, 0.01 * p.First)));
    }

    [Fact] // R package spc, xewma.arl; Crowder 1987 Table 1 and Lucas and Saccucci 1990 Table 3.
    public void Moving_averages()
    {
        var reference = ReferenceCase.Load("ewma-arl-normal");
        var (crowder, saccucci) = (reference.Parameters("crowder_shifts"), reference.Parameters("lucas_saccucci_shifts"));
        reference.Equal(crowder.Select(m => Ewma(m, 0.5, 2)), "crowder_50");
        reference.Equal(crowder.Select(m => Ewma(m, 0.05, 2)), "crowder_05");
        reference.Equal(saccucci.Select(m => Ewma(m, 0.5, 3.071)), "lucas_saccucci_50");
        reference.Equal(saccucci.Select(m => Ewma(m, 0.03, 2.437)), "lucas_saccucci_03");
    }

    [Fact] // The printed tables; Crowder's 3.95 at weight 0.5 and shift 1.25 is a misprint (3.59).
    public void Printed_moving_averages()
    {
        var reference = ReferenceCase.Load("ewma-arl-normal");
        var (crowder, saccucci) = (reference.Parameters("crowder_shifts"), reference.Parameters("lucas_saccucci_shifts"));
        Assert.All(reference.PublishedAll("crowder_50").Zip(crowder).Where(p => p.Second != 1.25), p => Assert.Equal(p.First, Ewma(p.Second, 0.5, 2), 0.006));
        Assert.All(reference.PublishedAll("crowder_05").Zip(crowder), p => Assert.Equal(p.First, Ewma(p.Second, 0.05, 2), 0.006));
        Assert.All(reference.PublishedAll("lucas_saccucci_50").Zip(saccucci), p => Assert.Equal(p.First, Ewma(p.Second, 0.5, 3.071), 0.005 * p.First));
        Assert.All(reference.PublishedAll("lucas_saccucci_03").Zip(saccucci), p => Assert.Equal(p.First, Ewma(p.Second, 0.03, 2.437), 0.005 * p.First));
    }

    [Fact] // By hand: with weight one each value signals on its own, chance 2 (1 - Phi(3)) = 0.0026998, so 370.398 values.
    public void Weight_one_is_a_chart_of_single_values() => Assert.Equal(370.398, Ewma(0, 1, 3), 0.001);

    [Fact] // By hand: a limit near zero signals when a value exceeds the allowance, chance 1 - Phi(0.5) = 0.308538.
    public void A_limit_near_zero_is_a_chart_of_single_values() => Assert.Equal(1 / 0.308538, OneSided(0, 0.5, 1e-7), 1e-4);

    [Theory] // Runs too long for double precision, small weights, large limits: a number or a typed reason.
    [InlineData(0, 0.5, 100)]
    [InlineData(-8, 0.5, 10)]
    [InlineData(3, 0.5, 60)]
    [InlineData(0, 0, 30)]
    [InlineData(40, 0.5, 4)]
    [InlineData(0, 40, 4)]
    public void Extreme_sums(double shift, double allowance, double limit)
    {
        foreach (var run in (Outcome<double>[])[
            NormalCusumRunLength.OneSided(shift, allowance, limit), NormalCusumRunLength.TwoSided(shift, allowance, limit),
            NormalCusumRunLength.TwoSided(shift, allowance, limit, limit / 2)])
        {
            Assert.True(run.IsEstimated ? double.IsFinite(run.Value) && run.Value >= 1 : run.Reason.Kind == NotEstimableKind.DidNotConverge, run.ToString());
        }
    }

    [Theory] // Siegmund 1985, Sequential Analysis (from memory): for small drift, limit h + 1.166: (exp(2db) - 2db - 1) / (2d²), to a few percent.
    [InlineData(0.25, 6)]
    [InlineData(0.25, 20)]
    [InlineData(0.25, 60)]
    public void Long_runs_follow_the_diffusion_formula(double k, double h)
    {
        var b = h + 1.166;
        var diffusion = (Math.Exp(2 * k * b) - 2 * k * b - 1) / (2 * k * k);
        Assert.Equal(1, OneSided(0, k, h) / diffusion, 0.03);
    }

    [Theory]
    [InlineData(0, 0.005, 10)]
    [InlineData(0, 0.1, 9)]
    [InlineData(50, 0.1, 3)]
    public void Extreme_averages(double shift, double weight, double width)
    {
        var run = NormalEwmaRunLength.Mean(shift, weight, width);
        Assert.True(run.IsEstimated ? run.Value is >= 1 and < 1e12 : run.Reason.Kind == NotEstimableKind.DidNotConverge, run.ToString());
    }

    [Fact] // R package spc, pois.ewma.arl in the setting of Borror, Champ and Rigdon 1998; finer cells within one percent.
    public void Moving_averages_of_counts()
    {
        var reference = ReferenceCase.Load("poisson-ewma-arl");
        IEnumerable<double> Runs(int cells, CellMove move) => reference.Parameters("means").Select(m => PoissonEwmaRunLength.Mean(
            m, reference.Parameter("expected"), reference.Parameter("weight"), reference.Parameter("width"), cells, move).Value);
        reference.Equal(Runs(101, CellMove.Spread), "spread_101");
        reference.Equal(Runs(101, CellMove.Midpoint), "midpoint_101");
        reference.Equal(Runs(401, CellMove.Spread), "spread_401");
        Assert.All(Runs(101, CellMove.Spread).Zip(reference.ExpectedAll("spread_401")), p => Assert.Equal(p.Second, p.First, 0.01 * p.Second));
    }

    [Fact] // By hand: with weight one and limits 4 ± 4, the average is the count itself and signals above 8, chance 0.0213634.
    public void A_moving_average_of_counts_with_weight_one() =>
        Assert.Equal(1 / (1 - 0.9786366 + Math.Exp(-4)), PoissonEwmaRunLength.Mean(4, 4, 1, 2, 301).Value, 0.01);

    [Fact]
    public void Impossible_designs_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => NormalCusumRunLength.OneSided(double.NaN, 0.5, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => NormalCusumRunLength.OneSided(0, 0.5, 4, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => NormalCusumRunLength.TwoSided(0, -0.5, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => NormalEwmaRunLength.Mean(0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => PoissonEwmaRunLength.Mean(1, 1, 0.2, 3, 2));
    }

    private static double OneSided(double shift, double k, double h) => NormalCusumRunLength.OneSided(shift, k, h).Value;

    private static double TwoSided(double shift, double k, double h, double head = 0) => NormalCusumRunLength.TwoSided(shift, k, h, head).Value;

    private static double Ewma(double shift, double weight, double width) => NormalEwmaRunLength.Mean(shift, weight, width).Value;
}

using FleetTrend.Statistics.Decisions;

namespace FleetTrend.Statistics.Tests.Decisions;

public sealed class DemandForecastTests
{
    private static readonly WeibullLife Life = new(2.5, 400);

    [Fact] // 400,000 simulated positions in R, seed 20240606: the distribution of failures in 1,000 h from new, and in 200 h at age 600.
    public void One_position_with_renewal()
    {
        var reference = ReferenceCase.Load("renewal-demand");
        var fresh = DemandForecast.Compute([new PartInUse(0, 1000)], [Life]);
        reference.Equal(Padded(fresh.Chances), "new_1000");
        reference.Equal(Padded(DemandForecast.Compute([new PartInUse(600, 200)], [Life]).Chances), "old_200");
        Assert.Equal(reference.Expected("mean_new_1000"), fresh.Mean, 0.01);
        Assert.Equal(2.41, fresh.Mean, 0.01); // Renewal theory, numerically in R.
        Assert.Equal(reference.Expected("first_old_200"), 1 - DemandForecast.Compute([new(600, 200)], [Life]).Chances[0], 1e-9);
    }

    [Fact] // Blackwell's limit: in the long run the mean is t / mu + (cv² - 1) / 2 = 5.227 at 2,000 h (Weibull 2.5, 400 h).
    public void The_long_run_mean() =>
        Assert.Equal(5.23, DemandForecast.Compute([new PartInUse(0, 2000)], [Life]).Mean, 0.03);

    [Fact] // Independent positions add: means add, and a hundred positions are near normal.
    public void Positions_add()
    {
        var one = DemandForecast.Compute([new PartInUse(300, 100)], [Life]);
        var hundred = DemandForecast.Compute([.. Enumerable.Repeat(new PartInUse(300, 100), 100)], [Life]);
        Assert.Equal(100 * one.Mean, hundred.Mean, 8);
        var deviation = 10 * Math.Sqrt(one.Chances.Select((p, k) => p * (k - one.Mean) * (k - one.Mean)).Sum());
        Assert.Equal(hundred.Mean - 1.96 * deviation, hundred.Interval.Lower, 1.5);
        Assert.Equal(hundred.Mean + 1.96 * deviation, hundred.Interval.Upper, 1.5);
        Assert.True(hundred.Stock(0.95).Covered >= 0.95);
        Assert.Equal(1, hundred.Chances.Sum(), 10);
    }

    [Fact] // Not knowing the life widens the interval.
    public void Several_lives_widen_the_interval()
    {
        var parts = Enumerable.Range(0, 60).Select(k => new PartInUse(10 * k, 120)).ToList();
        var known = DemandForecast.Compute(parts, [Life]);
        var unknown = DemandForecast.Compute(parts, [new(2.5, 300), Life, new(2.5, 530)]);
        Assert.True(unknown.Interval.Upper - unknown.Interval.Lower > known.Interval.Upper - known.Interval.Lower);
    }

    [Fact] // Quantiles of the Poisson and negative binomial distributions in R.
    public void Stock_for_a_service_level()
    {
        var reference = ReferenceCase.Load("stock-levels");
        var stock = reference.Column("mean").Select(m => StockLevel.ForPoisson(m, 0.95)).ToList();
        reference.Equal(stock.Select(s => (double)s.Stock), "poisson");
        reference.Equal(stock.Select(s => s.Covered), "covered");
        reference.Equal(StockLevel.ForNegativeBinomial(3.2, 2, 0.95).Stock, "negative_binomial_mean_3.2_size_2");
        Assert.Equal(0, StockLevel.ForPoisson(0, 0.95).Stock);
        // Poisson and negative binomial tables, to the digits that they print.
        Assert.Equal([2, 4, 6, 10], stock.Select(s => s.Stock));
        Assert.All(stock.Zip([0.9526, 0.9814, 0.9554, 0.9574]), p => Assert.Equal(p.Second, p.First.Covered, 4));
        Assert.Equal(9, StockLevel.ForNegativeBinomial(3.2, 2, 0.95).Stock);
    }

    [Fact]
    public void No_parts_need_nothing()
    {
        var none = DemandForecast.Compute([], [Life]);
        Assert.Equal(0, none.Mean);
        Assert.Equal(0, none.Stock(0.99).Stock);
        Assert.Throws<ArgumentException>(() => DemandForecast.Compute([], []));
    }

    private static IEnumerable<double> Padded(IReadOnlyList<double> chances) =>
        Enumerable.Range(0, 10).Select(k => k < 9 ? chances.ElementAtOrDefault(k) : chances.Skip(9).Sum());
}

using FleetTrend.Statistics.Decisions;
using FleetTrend.Statistics.Lives;
using FleetTrend.Statistics.Tests.Lives;

namespace FleetTrend.Statistics.Tests.Decisions;

/// <summary>Parts that will be needed: failures found at looks, and the parts that they take.</summary>
public sealed class DemandForecastTests
{
    private static readonly LifeModel Life = new(LifeDistribution.Weibull, 400, 2.5);

    // 400,000 simulated positions in R, seed 20240606: the distribution of failures in 1,000 h from new, and in 200 h at age 600, each renewed at
    // once. Looks at
    // each 400th of the hours come as near to at once as the tolerance asks.
    [Fact]
    public void One_position_that_is_looked_at_all_the_time_is_renewed_at_once()
    {
        var reference = ReferenceCase.Load("renewal-demand");
        var fresh = Closely(0, 1000);
        reference.Equal(Padded(fresh.Chances), "new_1000");
        reference.Equal(Padded(Closely(600, 200).Chances), "old_200");
        Assert.Equal(reference.Expected("mean_new_1000"), fresh.Mean, 0.01);
        Assert.Equal(2.41, fresh.Mean, 0.01); // Renewal theory, numerically in R.
        Assert.Equal(reference.Expected("first_old_200"), 1 - Closely(600, 200).Chances[0], 1e-9);
    }

    // Blackwell's limit at 2,000 h, Weibull 2.5, 400 h: a life has the mean 354.9 h and the variance 23,060 h²; until the look after it, 5 h apart, 2.5 h and
    // 2.1 h² more. In steps of 5 h these are 71.48 and 922.5, and the mean is 400 / 71.48 + (922.5 - 71.48² + 71.48) / (2 71.48²) = 5.193.
    [Fact]
    public void The_long_run_mean() => Assert.Equal(5.193, Closely(0, 2000).Mean, 0.002);

    // By hand: without wear every look finds a failure with p = 1 - exp(-100/400) = 0.2212, whatever was renewed. Looks after 60, 160 and 260 h lie
    // within 300 h;
    // the first closes 40 + 60 h. Three trials: (1 - p)^3, 3 p (1 - p)^2, 3 p^2 (1 - p), p^3.
    [Fact]
    public void Without_wear_looks_are_trials()
    {
        var p = 1 - Math.Exp(-0.25);
        var forecast = Of(new LifeModel(LifeDistribution.Exponential, 400), new HoursAhead(300), new PartInUse(730, 770, 60, 100));
        double[] byHand = [Math.Pow(1 - p, 3), 3 * p * (1 - p) * (1 - p), 3 * p * p * (1 - p), p * p * p];
        for (var k = 0; k < byHand.Length; k++)
            Assert.Equal(byHand[k], forecast.Chances[k], 12);
    }

    // By hand, with S(t) = exp(-(t/400)^2.5): good at 300 h, now 350 h, looks at 400 h and 500 h. a = 1 - S(400)/S(300), b = S(400)/S(300) - S(500)/S(300);
    // renewed at 400 h it fails by the next look with c = 1 - S(100). None: S(500)/S(300); two: a c; one: the rest.
    [Fact]
    public void What_is_found_at_a_look_is_new_from_there()
    {
        double S(double t) => Math.Exp(-Math.Pow(t / 400, 2.5));
        var (a, c) = (1 - S(400) / S(300), 1 - S(100));
        var chances = Of(Life, new HoursAhead(150), new PartInUse(300, 350, 50, 100)).Chances;
        Assert.Equal(S(500) / S(300), chances[0], 12);
        Assert.Equal(a * c, chances[2], 12);
        Assert.Equal(1 - S(500) / S(300) - a * c, chances[1], 12);
    }

    // By hand as above, where a good part goes out at a look with 0.2 and counts for nothing. At the first look it fails with a, or goes out good with
    // 0.2 (1 - a), or stays; what is new fails by the second with c, what stayed with b' = 1 - S(500)/S(400). Two: a c; none: (1 - a)(0.2 (1 - c) +
    // 0.8 (1 - b')).
    [Fact]
    public void A_good_part_that_goes_out_counts_for_nothing_and_what_comes_in_is_new()
    {
        double S(double t) => Math.Exp(-Math.Pow(t / 400, 2.5));
        var (a, b, c) = (1 - S(400) / S(300), 1 - S(500) / S(400), 1 - S(100));
        var chances = DemandForecast.Compute([new UnitInUse([new PartInUse(300, 350, 50, 100)], [new HoursAhead(150)])], Life, goesOutGood: 0.2)[0].Chances;
        Assert.Equal(a * c, chances[2], 12);
        Assert.Equal((1 - a) * (0.2 * (1 - c) + 0.8 * (1 - b)), chances[0], 12);
        Assert.Equal(1, chances.Sum(), 12);
    }

    [Fact] // By hand: the next look comes after 50 h; at 49 h nothing has been found, whatever failed.
    public void Nothing_is_found_before_a_look() => Assert.Equal([1.0], Of(Life, new HoursAhead(49), new PartInUse(300, 350, 50, 100)).Chances);

    // By hand: 49 h in the mean with a spread of 10 h, and a look after 50 h. Of the five nodes at 0, +-1.3556 and +-2.8570 the two above lie beyond: the look
    // comes with 0.2220759 + 0.0112574. Two parts of the aircraft share it: both are found, or neither.
    [Fact]
    public void What_an_aircraft_may_fly_is_common_to_its_parts()
    {
        var (w, q) = (0.2220759220056126 + 0.01125741132772069, 1 - Math.Exp(-Math.Pow(1, 2.5) + Math.Pow(0.75, 2.5)));
        var part = new PartInUse(300, 350, 50, 100);
        var chances = Of(Life, new HoursAhead(49, 10), part, part).Chances;
        Assert.Equal(w * q * q, chances[2], 12);
        Assert.Equal(2 * w * q * (1 - q), chances[1], 12);
    }

    // R (spares.R): every pattern of failures at the looks of six positions written out one by one, summed by fft; and for a fitted life the mean of the
    // distributions over 4,000 draws from the normal law of its parameters, whose Monte Carlo error is below 0.003.
    [Theory]
    [InlineData(LifeDistribution.Weibull, "weibull")]
    [InlineData(LifeDistribution.Lognormal, "lognormal")]
    public void Demand_of_a_fleet_equals_the_reference(LifeDistribution distribution, string name)
    {
        var known = ReferenceCase.Load("spares-known-life");
        var units = Units(known);
        var model = new LifeModel(distribution, known.Parameter(name, "scale"), known.Parameter(name, "shape"));
        known.Equal(Padded(DemandForecast.Compute(units, model)[0].Chances), name);

        var drawn = ReferenceCase.Load("spares-fitted-life");
        var fit = LifeFit.Fit(distribution, drawn.Lives()).Value;
        var forecast = DemandForecast.Compute(Units(drawn), fit)[0];
        drawn.Equal(Padded(forecast.Chances), name, "chances");
        Assert.Equal(drawn.Expected(name, "stock_95"), forecast.Stock(0.95).Stock);
        // Taken as known, the fitted life misses it by more than the tolerance.
        var asKnown = DemandForecast.Compute(Units(drawn), fit.Model)[0];
        Assert.True(Padded(asKnown.Chances).Zip(drawn.ExpectedAll(name, "chances")).Max(p => Math.Abs(p.First - p.Second)) > 0.01);
    }

    [Fact] // Independent positions add: means add, and a hundred positions are near normal.
    public void Positions_add()
    {
        var part = new PartInUse(300, 300, 100, 100);
        var one = Of(Life, new HoursAhead(100), part);
        var hundred = DemandForecast.Compute([.. Enumerable.Repeat(new UnitInUse([part], [new HoursAhead(100)]), 100)], Life)[0];
        Assert.Equal(100 * one.Mean, hundred.Mean, 8);
        var deviation = 10 * Math.Sqrt(one.Chances.Select((p, k) => p * (k - one.Mean) * (k - one.Mean)).Sum());
        var interval = hundred.Interval(0.95);
        Assert.Equal(hundred.Mean - 1.96 * deviation, interval.Lower, 1.5);
        Assert.Equal(hundred.Mean + 1.96 * deviation, interval.Upper, 1.5);
        Assert.True(hundred.Stock(0.95).Covered >= 0.95);
        Assert.Equal(1, hundred.Chances.Sum(), 10);
    }

    // By hand: 0, 1 or 2 failures with 0.5, 0.3, 0.2; each takes none, one or three parts with 0.1, 0.6, 0.3. No part: 0.5 + 0.3 * 0.1 + 0.2 * 0.01 = 0.532;
    // one: 0.3 * 0.6 + 0.2 * 2 * 0.1 * 0.6 = 0.204; six: 0.2 * 0.3 * 0.3 = 0.018. Two more are needed for certain: everything moves up by two.
    [Fact]
    public void A_failure_may_take_none_or_several_parts()
    {
        var compound = DemandForecast.FromChances([0.5, 0.3, 0.2]).Compound([0.1, 0.6, 0, 0.3]);
        Assert.Equal(0.532, compound.Chances[0], 12);
        Assert.Equal(0.204, compound.Chances[1], 12);
        Assert.Equal(0.018, compound.Chances[6], 12);
        Assert.Equal(0.7 * 1.5, compound.Mean, 12);
        Assert.Equal(0.532, compound.Plus(2).Chances[2], 12);
        Assert.Equal(compound.Mean + 2, compound.Plus(2).Mean, 12);
        Assert.Equal(2 * compound.Mean, compound.Plus(compound).Mean, 12);
    }

    [Fact] // Poisson table, mean 3.2: P(at most 5) = 0.895, P(at most 6) = 0.955.
    public void Stock_for_a_service_level()
    {
        var chances = Enumerable.Range(0, 40).Select(k => Math.Exp(k * Math.Log(3.2) - 3.2 - Enumerable.Range(1, k).Sum(i => Math.Log(i))));
        Assert.Equal(6, DemandForecast.FromChances(chances).Stock(0.95).Stock);
    }

    [Fact]
    public void No_aircraft_no_demand() => Assert.Empty(DemandForecast.Compute([], Life));

    private static DemandForecast Of(LifeModel life, HoursAhead ahead, params PartInUse[] parts) =>
        Assert.Single(DemandForecast.Compute([new UnitInUse(parts, [ahead])], life));

    private static DemandForecast Closely(double age, double hours) => Of(Life, new HoursAhead(hours), new PartInUse(age, age, hours / 400, hours / 400));

    private static List<UnitInUse> Units(ReferenceCase of) =>
    [
        .. of.Parameters("good").Select((good, i) => new UnitInUse(
            [new PartInUse(good, of.Parameters("age")[i], of.Parameters("to_look")[i], of.Parameter("look_hours"))], [new HoursAhead(of.Parameters("ahead")[i])])),
    ];

    private static IEnumerable<double> Padded(IReadOnlyList<double> chances) =>
        Enumerable.Range(0, 10).Select(k => k < 9 ? chances.ElementAtOrDefault(k) : chances.Skip(9).Sum());
}

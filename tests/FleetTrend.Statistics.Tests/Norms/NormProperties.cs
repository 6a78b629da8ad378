using CsCheck;
using FleetTrend.Statistics.Norms;
using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Tests.Norms;

/// <summary>Invariances of rates and norms that follow from their definitions.</summary>
public sealed class NormProperties
{
    private static readonly Gen<List<CountExposure>> GenUnits =
        (from events in Gen.Int[0, 40]
         from hours in Gen.Double[0.5, 5000]
         select new CountExposure(events, hours)).List[2, 30];

    [Fact]
    public void Hours_rescale_a_rate() => Gen.Select(Gen.Int[0, 200], Gen.Double[1, 1e5]).Sample((a, t) =>
    {
        var (rate, scaled) = (RateEstimate.Estimate(a, t).Value, RateEstimate.Estimate(a, 10 * t).Value);
        Assert.Equal(rate.Interval.Upper, 10 * scaled.Interval.Upper, 1e-9 * rate.Interval.Upper);
        Assert.True(rate.Interval.Contains(rate.Rate));
    });

    [Fact]
    public void Units_of_any_size_can_be_tested_for_one_rate() =>
        (from events in Gen.OneOf(Gen.Int[0, 3], Gen.Int[0, 5000])
         from hours in Gen.OneOf(Gen.Double[1e-9, 1e-3], Gen.Double[0.5, 5000], Gen.Double[1e5, 1e12])
         select new CountExposure(events, hours)).List[1, 20].Sample(units =>
    {
        if (EqualRatesTest.Test(units).TryGetValue(out var test))
            Assert.True(double.IsFinite(test.ChiSquare) && test.PValue is >= 0 and <= 1 && test.DeviancePValue is >= 0 and <= 1);
    });

    [Fact]
    public void Order_of_units_and_a_unit_without_hours_change_no_standing() => GenUnits.Sample(units =>
    {
        var counts = units.Select((u, i) => new UnitCount($"N{i:D3}", u.Events, u.Exposure)).ToList();
        var there = LeaveOneOutTest.Test([new NormStratum("s", counts)]);
        var back = LeaveOneOutTest.Test([new NormStratum("s", [.. counts.AsEnumerable().Reverse(), new UnitCount("Z", 0, 0)])]);
        Assert.Equal(["Z"], back.NotComparable);
        Assert.All(there.Standings.Zip(back.Standings), p =>
        {
            Assert.Equal(p.First.UpperPValue, p.Second.UpperPValue, 1e-9);
            Assert.Equal(p.First.Expected, p.Second.Expected, 1e-9 * (1 + p.First.Expected));
            Assert.InRange(p.First.UpperPValue, 0, 1);
        });
    });

    [Fact]
    public void Q_values_never_lie_below_p_values_and_rise_with_them() => Gen.Double[0, 1].List[0, 60].Sample(p =>
    {
        var q = FalseDiscovery.QValues(p);
        for (var i = 0; i < p.Count; i++)
        {
            Assert.True(q[i] >= p[i] && q[i] <= 1);
            for (var j = 0; j < p.Count; j++)
                Assert.True(p[i] > p[j] || q[i] <= q[j]);
        }
    });

    [Fact] // Expected hours or other units of exposure: the distribution's shape does not care, its mean follows.
    public void A_gamma_poisson_law_rescales() => GenUnits.Sample(
        units =>
        {
            if (!GammaPoissonFit.Fit(units).TryGetValue(out var fit))
                return;
            var scaled = GammaPoissonFit.Fit([.. units.Select(u => new CountExposure(u.Events, 8 * u.Exposure))]).Value;
            Assert.Equal(fit.NoExtraVariation, scaled.NoExtraVariation);
            Assert.Equal(fit.Mean, 8 * scaled.Mean, 1e-6 * fit.Mean);
            if (!fit.NoExtraVariation)
                Assert.Equal(fit.Shape, scaled.Shape, 1e-4 * fit.Shape);
        },
        iter: 60);

    [Fact]
    public void Shrunk_rates_are_numbers_inside_their_intervals() => GenUnits.Sample(
        units =>
        {
            if (!HierarchicalRates.Estimate(units).TryGetValue(out var rates))
                return;
            Assert.All(rates.Units, u => Assert.True(
                double.IsFinite(u.Rate) && u.RateInterval.Lower <= u.Rate && u.RateInterval.Upper >= u.Rate
                && u.ExceedanceProbability(1.5) is >= 0 and <= 1));
        },
        iter: 15);
}

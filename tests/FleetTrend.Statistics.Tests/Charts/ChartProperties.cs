using CsCheck;
using FleetTrend.Statistics.Charts;
using FleetTrend.Statistics.Monitoring;
using FleetTrend.Statistics.Norms;

namespace FleetTrend.Statistics.Tests.Charts;

/// <summary>What must hold of charts, run lengths and tests of many units whatever the numbers.</summary>
public sealed class ChartProperties
{
    private static readonly Gen<List<CountExposure>> GenUnits =
        (from events in Gen.OneOf(Gen.Int[0, 3], Gen.Int[0, 5000])
         from hours in Gen.OneOf(Gen.Double[1e-9, 1e-3], Gen.Double[0.5, 5000], Gen.Double[1e5, 1e12])
         select new CountExposure(events, hours)).List[1, 20];

    [Fact]
    public void Units_of_any_size_give_numbers_or_a_reason() => GenUnits.Sample(units =>
    {
        if (UChart.Draw(units).TryGetValue(out var chart))
        {
            Assert.All(chart.Points, p => Assert.True(
                double.IsFinite(p.Deviations) && p.LowerLimit >= 0 && p.UpperLimit >= p.LowerLimit
                && p.UpperPValue is >= 0 and <= 1 && p.MidUpperPValue >= 0 && p.MidUpperPValue <= p.UpperPValue));
        }
        if (EqualRatesTest.Test(units).TryGetValue(out var test))
            Assert.True(double.IsFinite(test.ChiSquare) && test.PValue is >= 0 and <= 1 && test.DeviancePValue is >= 0 and <= 1);
        if (GammaMoments.Estimate(units).TryGetValue(out var moments))
            Assert.True(double.IsFinite(moments.Shape) && moments.Shape > 0 && double.IsFinite(moments.Rate));
    });

    [Fact] // Hours in other units: distances from the centre line and chances stay, rates follow.
    public void A_chart_rescales() => GenUnits.Sample(units =>
    {
        if (!UChart.Draw(units).TryGetValue(out var chart))
            return;
        var scaled = UChart.Draw([.. units.Select(u => new CountExposure(u.Events, 8 * u.Exposure))]).Value;
        Assert.Equal(chart.Rate, 8 * scaled.Rate, 1e-12 * chart.Rate);
        Assert.All(chart.Points.Zip(scaled.Points), p =>
        {
            Assert.Equal(p.First.UpperPValue, p.Second.UpperPValue, 1e-12);
            Assert.Equal(p.First.Deviations, p.Second.Deviations, 1e-9 * (1 + Math.Abs(p.First.Deviations)));
        });
    });

    [Fact] // A gamma prior has the two quantiles that it was made from.
    public void A_prior_keeps_its_quantiles() => Gen.Select(Gen.Double[1, 1e5], Gen.Double[0.05, 0.97], Gen.Double[0.01, 0.3]).Sample((median, share, chance) =>
    {
        if (!GammaPrior.FromMtbf(median, share * median, chance).TryGetValue(out var prior))
            return;
        var distribution = prior.Posterior(new CountExposure(0, 0));
        Assert.Equal(0.5, distribution.Above(1 / median), 1e-9);
        Assert.Equal(chance, distribution.Above(1 / (share * median)), 1e-9);
    });

    [Fact] // A higher limit waits longer, a larger shift less long, both sides together less long than one.
    public void Run_lengths_are_in_order() => Gen.Select(Gen.Double[-1.5, 1.5], Gen.Double[0.1, 1], Gen.Double[0.5, 8]).Sample(
        (shift, k, h) =>
        {
            var run = NormalCusumRunLength.OneSided(shift, k, h).Value;
            Assert.True(run >= 1);
            Assert.True(NormalCusumRunLength.OneSided(shift, k, h * 1.1).Value > run);
            Assert.True(NormalCusumRunLength.OneSided(shift + 0.1, k, h).Value < run);
            Assert.True(NormalCusumRunLength.OneSided(shift, k, h, h / 2).Value <= run);
            var both = NormalCusumRunLength.TwoSided(shift, k, h).Value;
            Assert.True(both <= run);
            Assert.Equal(both, NormalCusumRunLength.TwoSided(-shift, k, h).Value, 1e-9 * both);
        },
        iter: 40);

    [Fact]
    public void Runs_of_gaps_are_in_order() => Gen.Select(Gen.Double[0.3, 3], Gen.Double[0.5, 8], Gen.Double[0.3, 3]).Sample(
        (k, h, mean) =>
        {
            foreach (var direction in Enum.GetValues<GapDirection>())
            {
                var run = ExponentialCusumRunLength.Mean(mean, k, h, direction).Value;
                Assert.True(run >= 1);
                Assert.True(ExponentialCusumRunLength.Mean(mean, k, h * 1.1, direction).Value > run);
                Assert.True(ExponentialCusumRunLength.Mean(mean, k, h, direction, h / 2).Value <= run);
            }
        },
        iter: 40);
}

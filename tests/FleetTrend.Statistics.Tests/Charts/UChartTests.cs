using FleetTrend.Statistics.Charts;
using FleetTrend.Statistics.Norms;

namespace FleetTrend.Statistics.Tests.Charts;

public sealed class UChartTests
{
    [Fact] // NIST/SEMATECH e-Handbook 6.3.3.1: 25 wafers, mean 16, limits 28 and 4; exact tail and dispersion in R.
    public void Nist_chart_of_counts()
    {
        var reference = ReferenceCase.Load("nist-6.3.3.1-c-chart");
        List<CountExposure> wafers = [.. reference.Counts("events").Select(e => new CountExposure(e, 1))];
        var chart = UChart.Draw(wafers).Value;
        reference.Equal(chart.Rate, "rate");
        Assert.Equal(reference.Published("upper_limit"), chart.Points[0].UpperLimit, 12);
        reference.Equal(chart.Points[0].UpperLimit, "upper_limit");
        reference.Equal(chart.Points[0].LowerLimit, "lower_limit");
        reference.Equal(chart.Points.Where(p => p.Signals).Select(p => p.Position + 1.0), "signals");
        reference.Equal(chart.Points.Single(p => p.Unit.Events == 31).UpperPValue, "upper_p_of_31");
        var test = EqualRatesTest.Test(wafers).Value;
        reference.Equal(test.ChiSquare, "equal_rates", "chi_square");
        reference.Equal(test.PValue, "equal_rates", "p");
    }

    [Fact] // Constructed; limits, deviations, exact tails and equal rates in R.
    public void Unequal_hours()
    {
        var reference = ReferenceCase.Load("u-chart-unequal-exposure");
        List<CountExposure> units = [.. reference.Counts("events").Zip(reference.Column("hours"), (e, h) => new CountExposure(e, h))];
        var chart = UChart.Draw(units).Value;
        reference.Equal(chart.Rate, "rate");
        reference.Equal(chart.Points.Select(p => p.UpperLimit), "upper_limit");
        reference.Equal(chart.Points.Select(p => p.LowerLimit), "lower_limit");
        reference.Equal(chart.Points.Select(p => p.Deviations), "deviations");
        reference.Equal(chart.Points.Select(p => p.UpperPValue), "upper_p");
        reference.Equal(chart.Points.Select(p => p.MidUpperPValue), "mid_upper_p");
        var test = EqualRatesTest.Test(units).Value;
        reference.Equal(test.ChiSquare, "equal_rates", "chi_square");
        reference.Equal(test.PValue, "equal_rates", "p");
        reference.Equal(test.Deviance, "equal_rates", "deviance");
    }

    [Fact] // A unit without hours has no point and moves nothing; positions stay those of the input.
    public void A_unit_without_hours_has_no_point()
    {
        var chart = UChart.Draw([new(1, 10), new(0, 0), new(3, 10)]).Value;
        Assert.Equal([0, 2], chart.Points.Select(p => p.Position));
        Assert.Equal(0.2, chart.Rate, 12);
    }

    [Fact]
    public void Nothing_to_draw_is_a_typed_reason()
    {
        Assert.Equal(NotEstimableKind.NothingObserved, UChart.Draw([]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NothingObserved, UChart.Draw([new(0, 0)]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoEvents, UChart.Draw([new(0, 10)]).Reason?.Kind);
        Assert.Throws<ArgumentOutOfRangeException>(() => UChart.Draw([new(1, 10)], 0));
    }
}

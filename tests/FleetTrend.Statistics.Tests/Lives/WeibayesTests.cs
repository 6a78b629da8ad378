using FleetTrend.Statistics.Lives;
using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Statistics.Tests.Lives;

public sealed class WeibayesTests
{
    // USAF Weibull Analysis Handbook AFWAL-TR-83-2079, the bases other than D taken as having had no failure.
    [Fact]
    public void No_failures_give_the_chi_square_limit()
    {
        var source = ReferenceCase.Load("bleed-system");
        var isD = source.Counts("base_d");
        Life[] good = [.. source.Lives(i => isD[i] == 0).Select(l => Life.GoodAt(l.Lower, 0, l.Count))];
        source.Equal(Weibayes.ScaleLowerLimit(2, good).Value, "weibayes_2_no_failure_scale_lower_95");
    }

    // NIST/SEMATECH e-Handbook 8.4.5.1: 800 h, 2 failures, one-sided 95 % lower limit of the MTBF 127.069 h (shape 1).
    [Fact]
    public void Shape_one_is_the_exponential_limit_of_the_handbook() =>
        Assert.Equal(127.069, Weibayes.ScaleLowerLimit(1, [Life.FailedAt(300), Life.FailedAt(400), Life.GoodAt(100)]).Value, 3);

    // By hand: 1000^2 - 600^2 = 800^2 hours squared, no failure: 800 / sqrt(-ln 0.05).
    [Fact]
    public void Hours_before_entry_do_not_count() =>
        Assert.Equal(800 / Math.Sqrt(-Math.Log(0.05)), Weibayes.ScaleLowerLimit(2, [Life.GoodAt(1000, 600)]).Value, 9);

    // Nelson 1982 p. 318: the mean of the exponential, ended by a date and by the last failure; and the shape of 2.
    [Fact]
    public void Two_sided_limits_equal_the_chi_square_form()
    {
        var source = ReferenceCase.Load("generator-fans");
        var byDate = Weibayes.Scale(1, source.Lives()).Value;
        source.Equal(byDate.Value, "exponential_mean");
        source.Equal([byDate.Interval.Lower, byDate.Interval.Upper], "exponential_mean_interval_time");
        var byFailure = Weibayes.Scale(1, source.Lives(), Truncation.Event).Value;
        source.Equal([byFailure.Interval.Lower, byFailure.Interval.Upper], "exponential_mean_interval_failures");
        var steep = Weibayes.Scale(2, source.Lives(), Truncation.Event).Value;
        source.Equal(steep.Value, "weibayes_2_scale");
        source.Equal([steep.Interval.Lower, steep.Interval.Upper], "weibayes_2_interval");
    }

    [Fact]
    public void No_hours_give_a_reason()
    {
        Assert.Equal(NotEstimableKind.NoEvents, Weibayes.Scale(2, [Life.GoodAt(5)]).Reason!.Kind);
        Assert.Equal(NotEstimableKind.NothingObserved, Weibayes.Scale(2, []).Reason!.Kind);
        Assert.Equal(NotEstimableKind.NothingObserved, Weibayes.ScaleLowerLimit(2, []).Reason!.Kind);
        Assert.Throws<ArgumentOutOfRangeException>(() => Weibayes.ScaleLowerLimit(0, []));
    }
}

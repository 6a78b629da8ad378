using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Statistics.Tests.Recurrences;

public sealed class TrendTestTests
{
    [Theory] // NIST e-Handbook 8.2.3.4 formulas on 8.2.2.3 data; MIL-HDBK-189; Halfbeak; HAHN.DAT of NIST: values in R.
    [InlineData("nist-power-law")]
    [InlineData("mil-hdbk-189-27-failures")]
    [InlineData("halfbeak-trend")]
    [InlineData("nist-hahn-trend")]
    public void Laplace_of_one_unit(string id)
    {
        var reference = ReferenceCase.Load(id);
        var unit = new RecurrenceUnit(0, reference.Parameter("end"), reference.Column("time"));
        reference.Equal(LaplaceTest.Test([unit]).Value.Statistic, "laplace");
        reference.Equal(LaplaceTest.Test([unit]).Value.ImprovingPValue, "laplace_p_improving");
    }

    [Fact] // NIST e-Handbook 8.2.3.4: chance of the Laplace statistic, in R.
    public void Nist_case_in_full()
    {
        var reference = ReferenceCase.Load("nist-power-law");
        var unit = new RecurrenceUnit(0, 1500, reference.Column("time"));
        reference.Equal(LaplaceTest.Test([unit]).Value.PValue, "laplace_p");
    }

    [Fact] // NIST sample output for HAHN.DAT: Laplace 3.416969 with cdf 0.9996833.
    public void Hahn_as_printed()
    {
        var reference = ReferenceCase.Load("nist-hahn-trend");
        var unit = new RecurrenceUnit(0, reference.Parameter("end"), reference.Column("time"));
        Assert.Equal(reference.Published("laplace"), LaplaceTest.Test([unit]).Value.Statistic, 1e-5);
        Assert.Equal(0.9996833, LaplaceTest.Test([unit]).Value.ImprovingPValue, 1e-7);
    }

    [Fact] // By hand: two windows of 10 h, events at 9 and 108: excess 4 + 3 over sqrt(2 * 100 / 12).
    public void Laplace_adds_over_windows()
    {
        var test = LaplaceTest.Test([new RecurrenceUnit(0, 10, 9), new RecurrenceUnit(100, 110, 108)]).Value;
        Assert.Equal(7 / Math.Sqrt(200.0 / 12), test.Statistic, 14);
    }

    [Fact] // By hand: spans (0,10], (10,20] with 1 and 3 events: middles 5 and 15, mean 10, spread 25; (-5 + 15) / sqrt(100) = 1.
    public void Laplace_on_counts()
    {
        var test = LaplaceTest.TestCounts([[new(0, 10, 1), new(10, 20, 3)]]).Value;
        Assert.Equal(1, test.Statistic, 14);
        Assert.Equal(NotEstimableKind.NoInformation, LaplaceTest.TestCounts([[new(0, 10, 4)]]).Reason?.Kind);
    }

    [Fact] // NIST e-Handbook 8.2.3.4: where the last failure ends the test it is left out of sum and count.
    public void The_last_event_is_left_out_where_it_ends_the_test()
    {
        var whole = new RecurrenceUnit(0, 80, 10, 30, 80);
        var without = new RecurrenceUnit(0, 80, 10, 30);
        Assert.Equal(
            LaplaceTest.Test([without]).Value.Statistic, LaplaceTest.Test([whole], Truncation.Event).Value.Statistic, 12);
    }

    [Fact]
    public void Tests_that_do_not_exist_give_typed_reasons()
    {
        Assert.Equal(NotEstimableKind.NoEvents, LaplaceTest.Test([new RecurrenceUnit(0, 10)]).Reason?.Kind);
    }
}

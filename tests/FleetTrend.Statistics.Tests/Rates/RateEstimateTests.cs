using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Tests.Rates;

public sealed class RateEstimateTests
{
    [Fact] // Counts 1 to 10 on 101 to 110, the epitools help example; limits from the chi-square formula in R.
    public void Rates_and_limits_equal_the_reference()
    {
        var reference = ReferenceCase.Load("poisson-rates-with-exposure");
        var exposure = reference.Column("exposure");
        var rates = reference.Counts("events").Select((e, i) => RateEstimate.Estimate(e, exposure[i]).Value).ToList();
        reference.Equal(rates.Select(r => r.Rate), "rate");
        reference.Equal(rates.Select(r => r.Interval.Lower), "exact_lower");
        reference.Equal(rates.Select(r => r.Interval.Upper), "exact_upper");
    }

    [Fact] // NIST/SEMATECH e-Handbook 8.4.5.1: 2 failures in 800 h, 90 percent: MTBF from 127.0690 to 2251.229.
    public void Nist_mtbf_limits_are_the_inverse_of_the_rate_limits()
    {
        var reference = ReferenceCase.Load("nist-8.4.5.1-hpp-bounds");
        var rate = RateEstimate.Estimate((int)reference.Parameter("events"), reference.Parameter("hours"), 0.9).Value;
        reference.Equal(1 / rate.Rate, "mtbf");
        reference.Equal(1 / rate.Interval.Upper, "lower");
        reference.Equal(1 / rate.Interval.Lower, "upper");
        Assert.Equal(reference.Published("lower"), 1 / rate.Interval.Upper, 4);
        Assert.Equal(reference.Published("upper"), 1 / rate.Interval.Lower, 3);
    }

    [Fact] // The same page: no failure in 1000 h leaves only a lower limit of the MTBF.
    public void Nist_zero_failure_limit()
    {
        var reference = ReferenceCase.Load("nist-8.4.5.1-hpp-bounds");
        var limits = reference.Parameters("zero_tails").Select(t => 1000 / GarwoodInterval.UpperLimit(0, 1 - t));
        reference.Equal(limits, "zero_lower");
        reference.Equal(1 / RateEstimate.Estimate(0, 1000).Value.Interval.Lower, "zero_upper");
    }

    [Theory] // NIST/SEMATECH e-Handbook 8.4.5.1, the factor tables' formula.
    [InlineData("conf_60", 0.6)]
    [InlineData("conf_80", 0.8)]
    [InlineData("conf_90", 0.9)]
    [InlineData("conf_95", 0.95)]
    public void Nist_factor_tables(string column, double confidence)
    {
        var reference = ReferenceCase.Load("nist-8.4.5.1-factor-table");
        var failures = reference.Counts("failures");
        var rates = failures.Select(f => RateEstimate.Estimate(f, 1, confidence).Value).ToList();
        // Without failures the factor is one of the whole time.
        reference.Equal(rates.Select(r => Math.Max(r.Events, 1) / r.Interval.Upper), column, "lower");
        reference.Equal(rates.Select(r => Math.Max(r.Events, 1) / r.Interval.Lower), column, "upper");
        reference.Equal(failures.Select(f => Math.Max(f, 1) / GarwoodInterval.UpperLimit(f, confidence)), column, "lower_one_sided");
    }

    [Fact] // The same tables' printed rows of one failure, to their last digit (from memory).
    public void Nist_factors_of_one_failure_as_printed()
    {
        var printed = ReferenceCase.Load("nist-8.4.5.1-factor-table").PublishedAll("one_failure");
        double[] found = [.. new[] { 0.6, 0.8, 0.9, 0.95 }.Select(c => RateEstimate.Estimate(1, 1, c).Value.Interval)
            .SelectMany(i => new[] { 1 / i.Upper, 1 / i.Lower })];
        Assert.All(printed.Zip(found), p => Assert.Equal(p.First, p.Second, 2e-4));
    }

    [Fact] // Garwood 1936: nothing seen in 2000 h still allows 3.6889 / 2000 per hour at 95 percent.
    public void No_events_give_zero_with_an_upper_limit()
    {
        var rate = RateEstimate.Estimate(0, 2000).Value;
        Assert.Equal(0, rate.Rate);
        Assert.Equal(0, rate.Interval.Lower);
        Assert.Equal(3.6889 / 2000, rate.Interval.Upper, 7);
    }

    [Fact]
    public void No_exposure_is_a_typed_reason() =>
        Assert.Equal(NotEstimableKind.NothingObserved, RateEstimate.Estimate(0, 0).Reason?.Kind);

    [Fact]
    public void Events_without_exposure_are_refused() => Assert.Throws<ArgumentException>(() => RateEstimate.Estimate(1, 0));
}

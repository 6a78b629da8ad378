using FleetTrend.Statistics.Norms;

namespace FleetTrend.Statistics.Tests.Norms;

public sealed class ClusteredRateTests
{
    [Theory] // Ten pumps (Gaver and O'Muircheartaigh 1987) and sixty simulated aircraft (seed 20240602): r/clusters.R, by glm with and without each unit.
    [InlineData("clustered-rate-pumps")]
    [InlineData("clustered-rate-aircraft")]
    public void Units_that_differ_against_R(string folder)
    {
        var reference = ReferenceCase.Load(folder);
        var rate = ClusteredRate.Estimate(Units(reference)).Value;
        reference.Equal(rate.Rate, "rate");
        reference.Equal(rate.Interval.Lower, "lower");
        reference.Equal(rate.Interval.Upper, "upper");
        reference.Equal(rate.Dispersion!.Value, "dispersion");
        var wider = ClusteredRate.Estimate(Units(reference), 0.99).Value;
        reference.Equal(wider.Interval.Lower, "lower_99");
        reference.Equal(wider.Interval.Upper, "upper_99");
    }

    // By hand: six aircraft of 500 h, three with one event. Each of these is beside 500 x 2/2,500 = 0.4, each other beside 0.6: squares 6 x 0.36 = 2.16
    // over 3² = 0.24. Student's t of 5 degrees is 2.570582, so that the limits are a factor exp(2.570582 x 0.489898) = 3.5230 away from 1 per 1,000 h.
    // Pearson: each of the six is 0.5 away from 0.5, 6 x 0.5 / 5 degrees = 0.6.
    [Fact]
    public void Six_aircraft_by_hand()
    {
        var rate = ClusteredRate.Estimate([new(1, 500), new(1, 500), new(1, 500), new(0, 500), new(0, 500), new(0, 500), new(0, 0)]).Value;
        Assert.Equal((3, 6, 0.001), (rate.Events, rate.Units, rate.Rate));
        Assert.Equal(3.5230, rate.Interval.Upper / rate.Rate, 4);
        Assert.Equal(3.5230, rate.Rate / rate.Interval.Lower, 4);
        Assert.Equal(0.6, rate.Dispersion!.Value, 12);
    }

    // By hand: all five on one of ten. It is beside none, 5² = 25; each other is beside 1,000 x 5/9,000 = 0.5556: 25 + 9 x 0.30864 = 27.778 over 25.
    // Student's t of 9 degrees is 2.262157: a factor exp(2.262157 x 1.054093) = 10.854. Pearson: (4.5² + 9 x 0.5²) / 0.5 / 9 = 5.
    [Fact]
    public void All_events_on_one_aircraft_leave_wide_limits()
    {
        var rate = ClusteredRate.Estimate([new(5, 1000), .. Enumerable.Repeat(new CountExposure(0, 1000), 9)]).Value;
        Assert.Equal(10.854, rate.Interval.Upper / rate.Rate, 3);
        Assert.Equal(5, rate.Dispersion!.Value, 12);
    }

    [Fact] // Garwood 1936: none in 2,000 h still allow 3.6889 / 2,000.
    public void No_event_has_the_exact_upper_limit()
    {
        var rate = ClusteredRate.Estimate([new(0, 1200), new(0, 800)]).Value;
        Assert.Equal((0, 0, null), (rate.Rate, rate.Interval.Lower, rate.Dispersion));
        Assert.Equal(3.6889 / 2000, rate.Interval.Upper, 7);
    }

    // By hand: one aircraft with 4 events: 1/4 + 0.25 = 0.5, a factor exp(1.959964 x 0.707107) = 3.9984. Two alike with 4 each: 1/8 + 0.25/2 = 0.25,
    // exp(1.959964 x 0.5) = 2.6644. With 4 and 0 of equal hours: squares 4² + 4² over 4² = 2, t of 4 degrees 2.776445: exp(3.926486) = 50.73.
    [Fact]
    public void Of_few_aircraft_it_is_assumed_how_much_they_differ()
    {
        Assert.Equal(3.9984, Factor([new(4, 700)]), 4);
        Assert.Equal(2.6644, Factor([new(4, 700), new(4, 700)]), 4);
        Assert.Equal(50.73, Factor([new(4, 700), new(0, 700)]), 2);
        Assert.Null(ClusteredRate.Estimate([new(4, 700)]).Value.Dispersion);
    }

    [Fact] // By hand: ten alike with one each show no spread at all; half a Poisson count of 10 gives exp(1.959964 x sqrt(0.05)) = 1.5500.
    public void Units_that_agree_are_not_taken_as_certain() => Assert.Equal(1.5500, Factor([.. Enumerable.Repeat(new CountExposure(1, 300), 10)]), 4);

    [Fact]
    public void Without_exposure_there_is_no_rate() =>
        Assert.Equal(NotEstimableKind.NothingObserved, ClusteredRate.Estimate([new(0, 0)]).Reason!.Kind);

    private static double Factor(CountExposure[] units)
    {
        var rate = ClusteredRate.Estimate(units).Value;
        return rate.Interval.Upper / rate.Rate;
    }

    private static List<CountExposure> Units(ReferenceCase reference) =>
        [.. reference.Column("events").Zip(reference.Column("exposure"), (x, t) => new CountExposure((int)x, t))];
}

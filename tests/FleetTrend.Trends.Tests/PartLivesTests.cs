using FleetTrend.Observations.Lives;
using FleetTrend.Statistics.Lives;
using FleetTrend.Trends.PartLives;

namespace FleetTrend.Trends.Tests;

public sealed class PartLivesTests
{
    private const string Gasket = "exhaust/cyl-1/gasket";

    // By hand: looks at 100 and 200 h; of four gaskets one fails before 100, one before 200, two are good at 200.
    // Masses 1/4 on (0, 100], 1/4 on (100, 200], 1/2 beyond; watched hours 100 + 200 + 200 + 200 = 700, 2 failures.
    private static readonly TrendSnapshot Four = Compute(new FleetBuilder("ZZ-1")
        .Life(Gasket, "gasket", 0, 100).Life(Gasket, "gasket", 100, 200).Life(Gasket, "gasket", 200).Life(Gasket, "gasket", 200));

    [Fact]
    public void The_curve_has_a_step_per_interval_that_holds_probability()
    {
        var trend = Whole(Four);
        Assert.Equal([(0.0, 100.0), (100.0, 200.0)], trend.Curve.Where(s => s.Upper is not null).Select(s => (s.Lower, s.Upper!.Value)));
        Assert.Equal([0.25, 0.5], trend.Curve.Where(s => s.Upper is not null).Select(s => Math.Round(s.Cdf, 9)));
        Assert.Contains("Turnbull 1976", trend.CurveMethod, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_few_failures_give_a_reason_and_the_limits_of_the_rate()
    {
        var trend = Whole(Four);
        Assert.Empty(trend.Fits);
        Assert.Equal("not enough data: 2 failures among 4 lives, and a fit needs 3", trend.NotEnoughData);
        // One aircraft, 2 failures in 700 h: 1/2 + 0.5² for how much others may differ, a factor exp(1.959964 x 0.866025) = 5.4596 (ClusteredRate).
        Assert.Equal(2 / 0.7, trend.FailureRate.Value!.Value, 12);
        Assert.Equal(2 / 0.7 * 5.4596, trend.FailureRate.Upper!.Value, 3);
    }

    [Fact] // No failure in 400 h: at most 3.6889 (Garwood 1936).
    public void No_failure_still_has_an_upper_limit()
    {
        var trend = Whole(Compute(new FleetBuilder("ZZ-1").Life(Gasket, "gasket", 400)));
        Assert.Empty(trend.Curve);
        Assert.StartsWith("no curve: ", trend.CurveMethod, StringComparison.Ordinal);
        Assert.Equal(3.6889 / 0.4, trend.FailureRate.Upper!.Value, 3);
        Assert.Equal("not enough data: 0 failures among 1 life, and a fit needs 3", trend.NotEnoughData);
    }

    [Fact]
    public void Lives_left_out_are_counted_by_reason()
    {
        var trend = Whole(Compute(new FleetBuilder("ZZ-1")
            .Life(Gasket, "gasket", 300, entry: 100)
            .Life(Gasket, "gasket", 200, exclusion: LifeExclusion.AgeUnknown)
            .Life(Gasket, "gasket", 0, 50, exclusion: LifeExclusion.FailedBeforeEntry)
            .Life(Gasket, "gasket", 0, exclusion: LifeExclusion.NeverExamined)
            .Life(Gasket, "gasket", 0, 0, exclusion: LifeExclusion.NoHours)));
        Assert.Equal((1, 0, 1, 1, 3), (trend.Lives, trend.Failures, trend.LateEntries, trend.AgeUnknown, trend.OtherExcluded));
        Assert.Equal((1, 1, 1), (trend.FailedBeforeEntry, trend.NeverExamined, trend.FailedInNoHours));
    }

    [Fact] // Two lives take part, from 100 and 120 h to 300 and 350 h; what is left out extends neither end.
    public void The_ages_followed_are_those_of_the_lives_that_take_part()
    {
        var trend = Whole(Compute(new FleetBuilder("ZZ-1")
            .Life(Gasket, "gasket", 300, entry: 100).Life(Gasket, "gasket", 200, 350, entry: 120)
            .Life(Gasket, "gasket", 900, exclusion: LifeExclusion.AgeUnknown)));
        Assert.Equal((100.0, 350.0), (trend.FollowedFromHours, trend.FollowedToHours));
        Assert.Null(Whole(Compute(new FleetBuilder("ZZ-1").Life(Gasket, "gasket", 0, exclusion: LifeExclusion.NeverExamined))).FollowedToHours);
    }

    [Fact] // All failures in one interval: the likelihood has no finite maximum in the shape.
    public void Where_no_distribution_fits_it_says_so()
    {
        var fleet = new FleetBuilder("ZZ-1");
        for (var k = 0; k < 5; k++)
            fleet.Life(Gasket, "gasket", 0, 100);
        var trend = Whole(Compute(fleet));
        Assert.Empty(trend.Fits);
        Assert.Contains("no distribution has a finite best fit", trend.NotEnoughData, StringComparison.Ordinal);
    }

    [Fact] // Definition: hours ten times as long give ages ten times as long and the same shape and chances.
    public void Hours_rescale()
    {
        var plain = Whole(TwoBases(1, 1)).Fits.Single(f => f.Distribution == "Weibull");
        var longer = Whole(TwoBases(10, 1)).Fits.Single(f => f.Distribution == "Weibull");
        Assert.Equal(plain.First.Value!.Value, longer.First.Value!.Value, 6);
        Assert.Equal(plain.B10.Lower!.Value * 10, longer.B10.Lower!.Value, 3);
        Assert.Equal(plain.Median.Upper!.Value * 10, longer.Median.Upper!.Value, 2);
    }

    [Fact] // By construction: at south every age is half that at north, so the ratio of medians is 1/2 and its inverse 2.
    public void A_base_is_compared_with_the_other_bases()
    {
        var trends = TwoBases(10, 2).PartLives;
        var (north, south) = (trends.Single(t => t.Base == "north").Contrast!, trends.Single(t => t.Base == "south").Contrast!);
        Assert.Equal(0.5, south.MedianRatio.Value!.Value, 6);
        Assert.Equal(2, north.MedianRatio.Value!.Value, 6);
        Assert.Equal(north.MedianTest!.PValue, south.MedianTest!.PValue, 9);
        Assert.Equal(south.MedianTest.PValue, south.MedianTest.QValue, 9); // two equal p-values of two: nothing failed before 100 h
        Assert.Null(south.EarlyTest);
        Assert.Equal((ContrastFinding.Worse, ContrastFinding.Better), (south.Median, north.Median));
        Assert.Null(trends.Single(t => t.Base is null).Contrast);
        Assert.Equal((24, 16), (south.OtherLives, south.OtherFailures));
    }

    [Fact] // One verdict: the medians that the comparison names are those of the rows, and the share of the one's elsewhere is the other's own.
    public void Rows_and_comparison_show_the_same_numbers()
    {
        var trends = new SimulatedFleet { Seed = 3, Welds = 0, GasketShape = 1.3, Jitter = 10 }.Compute().PartLives;
        var (north, south) = (trends.Single(t => t.Base == "north"), trends.Single(t => t.Base == "south"));
        Assert.Equal(north.Law, south.Law);
        Assert.Equal(south.Contrast!.Law, south.Law);
        Assert.Equal(south.Shown!.Median.Value!.Value, south.Contrast.MedianHere!.Value!.Value, 4);
        Assert.Equal(north.Shown!.Median.Value!.Value, south.Contrast.MedianElsewhere!.Value!.Value, 4);
        Assert.Equal(south.EarlyFailures!.Value!.Value, south.Contrast.EarlyHere!.Value!.Value, 9);
        Assert.Equal(north.EarlyFailures!.Value!.Value, south.Contrast.EarlyElsewhere!.Value!.Value, 9);
    }

    [Fact] // The parts are 16 of 24 within 470 h and within 940 h; one law for both has a median that is nobody's.
    public void Where_bases_differ_there_is_no_figure_for_all_of_them()
    {
        var whole = Whole(TwoBases(10, 2));
        Assert.True(whole.BasesDiffer);
        Assert.Empty(whole.Fits);
        Assert.Empty(whole.Curve);
        Assert.Null(whole.EarlyFailures);
        Assert.Contains("the bases differ", whole.NotEnoughData, StringComparison.Ordinal);
        Assert.Equal((48, 32), (whole.Lives, whole.Failures)); // what was counted stands
        Assert.False(Whole(TwoBases(10, 1)).BasesDiffer);
    }

    [Fact] // Definition: the smaller sum of Akaike's criteria over the bases; all together take their own smallest.
    public void The_law_shown_is_the_one_that_fits_better() => Assert.All(Enumerable.Range(0, 8), seed =>
    {
        var trends = new SimulatedFleet { Seed = seed, Welds = 0, GasketShape = seed % 2 == 0 ? 1 : 3, Jitter = 10 }.Compute().PartLives;
        List<PartLifeTrend> bases = [.. trends.Where(t => t.Base is not null)];
        double Sum(string law) => bases.Sum(t => t.Fits.Single(f => f.Distribution == law).Aic);
        var better = Sum("Weibull") < Sum("lognormal") ? "Weibull" : "lognormal";
        Assert.All(bases, t => Assert.Equal(better, t.Shown!.Distribution));
        var whole = trends.Single(t => t.Base is null);
        Assert.True(whole.BasesDiffer || whole.Shown!.Aic == whole.Fits.Min(f => f.Aic));
    });

    // Ten lives from new: found failed between 540 h and 640 h or later, none before. By hand: nothing failed before 540 h, and ten lives that
    // passed the first 100 h limit their chance to 1 - exp(-3.6889/10) (Garwood 1936).
    [Fact]
    public void Below_the_first_failure_the_data_speak_and_not_the_tail_of_a_law()
    {
        var fleet = new FleetBuilder("ZZ-1");
        for (var k = 0; k < 10; k++)
            fleet.Life(Gasket, "gasket", 540 + (20 * k), 640 + (20 * k));
        var trend = Whole(Compute(fleet.Life(Gasket, "gasket", 900, entry: 700)));
        Assert.NotEmpty(trend.Fits);
        Assert.All(trend.Fits, f => Assert.Null(f.FailureWithinLookAhead.Value));
        Assert.All(trend.Fits, f => Assert.Equal("none of 10 has failed before 540 h", f.FailureWithinLookAhead.NotEnoughData));
        Assert.Null(trend.EarlyFailures!.Value);
        Assert.Equal("none of 10 has failed before 540 h", trend.EarlyFailures.NotEnoughData);
        Assert.Equal(1 - Math.Exp(-3.6889 / 10), trend.EarlyFailures.Upper!.Value, 3);
        Assert.Equal((540.0, 900.0), (trend.Fits[0].Median.DataFrom, trend.Fits[0].Median.DataTo));
    }

    [Fact] // By construction: a tenth failed by the oldest look, so half lies beyond it by any law.
    public void Beyond_the_oldest_age_there_is_no_median()
    {
        var fleet = new FleetBuilder("ZZ-1");
        for (var k = 0; k < 40; k++)
            fleet.Life(Gasket, "gasket", k < 4 ? 100 + (50 * k) : 300, k < 4 ? 150 + (50 * k) : null);
        var median = Whole(Compute(fleet)).Shown!.Median;
        Assert.Null(median.Value);
        Assert.Equal("later than 300 h, the oldest age watched", median.NotEnoughData);
    }

    [Fact]
    public void A_fleet_at_one_base_has_no_contrast() => Assert.All(Four.PartLives, t => Assert.Null(t.Contrast));

    [Fact] // Against the estimate on the ages to the tenth: within one percentage point at ages 20 h to either side.
    public void Thousands_of_lives_are_taken_to_the_whole_hour_and_say_so()
    {
        var fleet = new SimulatedFleet { Seed = 7, Aircraft = 110, Welds = 0, Gaskets = 12, Jitter = 15 }.Build();
        var trend = FleetBuilder.Compute(fleet, new TrendParameters(), FleetBuilder.AsOf, "test").PartLives.Single(t => t.Base is null);
        Assert.Contains("whole hours", trend.CurveMethod, StringComparison.Ordinal);
        var exact = TurnbullEstimate.Estimate([.. fleet.SelectMany(f => f.Lives).Select(l => l.ForFit()!.Value)]).Value;
        Assert.All(Enumerable.Range(1, 12).Select(k => k * 100), age =>
        {
            var cdf = trend.Curve.Where(s => s.Upper <= age).Select(s => s.Cdf).LastOrDefault();
            Assert.InRange(cdf, exact.CdfBounds(age - 20).Least - 0.01, exact.CdfBounds(age + 20).Greatest + 0.01);
        });
    }

    /// <summary>Four aircraft and 24 lives a base, 16 failed; ages in tens of hours times the scale, divided at south.</summary>
    private static TrendSnapshot TwoBases(double scale, double southDivisor)
    {
        return Compute([.. Base("ZZ-1", "north", scale), .. Base("ZZ-2", "south", scale / southDivisor)]);

        static FleetBuilder[] Base(string registration, string name, double unit)
        {
            FleetBuilder[] aircraft = [.. Enumerable.Range(0, 4).Select(i => new FleetBuilder($"{registration}{i}", name))];
            for (var k = 0; k < 24; k++)
                aircraft[k % 4].Life(Gasket, "gasket", (10 + (2 * k)) * unit, k % 3 == 2 ? null : (14 + (2 * k)) * unit);
            return aircraft;
        }
    }

    private static PartLifeTrend Whole(TrendSnapshot snapshot) => snapshot.PartLives.Single(t => t.Base is null);

    private static TrendSnapshot Compute(params FleetBuilder[] fleet) =>
        FleetBuilder.Compute([.. fleet.Select(f => f.Build())], new TrendParameters(), FleetBuilder.AsOf, "test");
}

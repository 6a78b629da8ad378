using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Statistics.Tests.Recurrences;

public sealed class McfDifferenceTests
{
    [Fact] // Doganaksoy and Nelson 1998, braking grids: difference and robust errors, robust score of coxph in R.
    public void Braking_grids()
    {
        var reference = ReferenceCase.Load("braking-grids-two-batches");
        var last = reference.Parameter("last_unit_of_first_batch");
        var units = RecurrenceRows.Read(reference);
        var difference = McfDifference.Estimate(
            [.. units.Where(u => u.Key <= last).Select(u => u.Value)],
            [.. units.Where(u => u.Key > last).Select(u => u.Value)]).Value;
        var at = reference.ExpectedAll("at").Select(t => difference.At(t)!.Value).ToList();
        reference.Equal(at.Select(p => p.Difference), "difference");
        reference.Equal(at.Select(p => p.StandardError), "difference_se");
        reference.Equal(difference.Test.Statistic * difference.Test.Statistic, "robust_score_chi_square");
    }

    [Fact] // Simulated repairs, seed 20240604: the same from R; welding recurs less, so the second group is lower.
    public void Stop_drilled_against_weld_repaired()
    {
        var reference = ReferenceCase.Load("sim4-recurrence-two-sample-mcf");
        var methodOf = reference.Counts("unit").Zip(reference.Text("method")).DistinctBy(p => p.First)
            .ToDictionary(p => p.First, p => p.Second);
        var units = RecurrenceRows.Read(reference).ToLookup(u => methodOf[u.Key], u => u.Value);
        var difference = McfDifference.Estimate([.. units["stop_drilled"]], [.. units["weld_repaired"]]).Value;
        var at = reference.ExpectedAll("at").Select(t => difference.At(t)!.Value).ToList();
        reference.Equal(reference.ExpectedAll("at").Select(t => difference.First.At(t)!.Value.Value), "stop_drilled");
        reference.Equal(reference.ExpectedAll("at").Select(t => difference.Second.At(t)!.Value.Value), "weld_repaired");
        reference.Equal(at.Select(p => p.Difference), "difference");
        reference.Equal(at.Select(p => p.StandardError), "difference_se");
        reference.Equal(difference.Test.Statistic * difference.Test.Statistic, "robust_score_chi_square");
        Assert.True(difference.Test.FirstHigherPValue < 0.001);
    }

    [Fact] // Definition: a band that holds at all ages is wider than limits that hold at one.
    public void The_band_holds_the_pointwise_limits()
    {
        var random = new Random(7);
        RecurrenceUnit Unit(int events) => new(0, 1000, Enumerable.Range(0, events).Select(_ => 1000 * (1 - random.NextDouble())));
        var difference = McfDifference.Estimate(
            [.. Enumerable.Range(0, 30).Select(i => Unit(i % 4))], [.. Enumerable.Range(0, 30).Select(i => Unit(i % 5))]).Value;
        Assert.InRange(difference.BandFactor, 2.2, 3.5);
        Assert.All(difference.Points, p => Assert.True(p.BandLower <= p.Lower && p.BandUpper >= p.Upper));
    }

    [Fact]
    public void A_lone_unit_or_no_events_are_typed_reasons()
    {
        var units = new[] { new RecurrenceUnit(0, 10, 5), new RecurrenceUnit(0, 10) };
        Assert.Equal(NotEstimableKind.TooFewEvents, McfDifference.Estimate(units, [units[0]]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoEvents, McfDifference.Estimate([units[1], units[1]], [units[1], units[1]]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NothingObserved, McfDifference.Estimate(units, []).Reason?.Kind);
    }
}

using FleetTrend.Statistics.Rates;
using FleetTrend.Statistics.Recurrences;
using FleetTrend.Statistics.Tests.Lives;

namespace FleetTrend.Statistics.Tests.Recurrences;

public sealed class MeanCumulativeFunctionTests
{
    [Fact] // Nelson and Doganaksoy 1989, Nelson 1995: 41 engines, 48 valve-seat replacements; values in R.
    public void Valve_seats_every_point()
    {
        var reference = ReferenceCase.Load("valve-seat-mcf");
        var mcf = MeanCumulativeFunction.Estimate([.. RecurrenceRows.Read(reference).Values], limits: McfLimits.Logarithmic).Value;
        CheckAllVariances(reference, [.. RecurrenceRows.Read(reference).Values]);
        reference.Equal(mcf.Points.Select(p => p.Lower), "log_lower");
        reference.Equal(mcf.Points.Select(p => p.Upper), "log_upper");
        reference.Equal(mcf.Events, "total_events");
        reference.Equal(mcf.ExposureHours, "total_exposure");
        reference.Equal(RateEstimate.Estimate((int)mcf.Events, mcf.ExposureHours).Value.Rate, "rate");
    }

    [Fact] // The same data on the plain scale.
    public void Valve_seats_plain_limits()
    {
        var reference = ReferenceCase.Load("valve-seat-mcf");
        var units = RecurrenceRows.Read(reference).Values.ToList();
        var mcf = MeanCumulativeFunction.Estimate(units, limits: McfLimits.Plain).Value;
        reference.Equal(mcf.Points.Select(p => p.Lower), "plain_lower");
        reference.Equal(mcf.Points.Select(p => p.Upper), "plain_upper");
    }

    [Theory] // Printed t tables: two-sided 95 percent, 40 degrees of freedom 2.0211, 8 degrees 2.3060; divisor units less one.
    [InlineData(61, 2.0211)]
    [InlineData(653, 2.3060)]
    public void Valve_seats_student_limits(double days, double quantile)
    {
        var units = RecurrenceRows.Read(ReferenceCase.Load("valve-seat-mcf")).Values.ToList();
        var point = MeanCumulativeFunction.Estimate(units).Value.At(days)!.Value;
        var margin = quantile * point.StandardError * Math.Sqrt(41.0 / 40) / point.Value;
        Assert.Equal(point.Value * Math.Exp(margin), point.Upper, 1e-4 * point.Upper);
        Assert.Equal(point.Value * Math.Exp(-margin), point.Lower, 1e-4 * point.Lower);
    }

    [Fact] // Printed t table: 1000 degrees of freedom, 1.9623.
    public void Many_units_use_the_expansion_of_the_quantile()
    {
        var units = Enumerable.Range(0, 1001).Select(i => new RecurrenceUnit(0, 10, i == 0 ? [5.0] : [])).ToList();
        var point = MeanCumulativeFunction.Estimate(units).Value.Points[0];
        Assert.Equal(1.9623, Math.Log(point.Upper / point.Value) * point.Value / (point.StandardError * Math.Sqrt(1001.0 / 1000)), 4);
    }

    [Theory] // Nelson 1995 figures to four digits, and units at risk as printed with R's valveSeat example.
    [InlineData(61, 0.0244, 41)]
    [InlineData(98, 0.1463, 41)]
    [InlineData(202, 0.2927, 41)]
    [InlineData(298, 0.4634, 41)]
    [InlineData(404, 0.6835, 40)]
    [InlineData(497, 0.8085, 40)]
    [InlineData(604, 1.0597, 22)]
    [InlineData(621, 1.1185, 17)]
    [InlineData(646, 1.3205, 13)]
    [InlineData(653, 1.5427, 9)]
    public void Valve_seats_as_printed(double days, double value, int atRisk)
    {
        var reference = ReferenceCase.Load("valve-seat-mcf");
        var point = MeanCumulativeFunction.Estimate([.. RecurrenceRows.Read(reference).Values]).Value.At(days)!.Value;
        Assert.Equal(value, point.Value, 4);
        Assert.Equal(atRisk, point.AtRisk);
    }

    [Fact] // The trap: minus the logarithm of R's Kaplan-Meier curve of the same rows is 1.579 at 653 days; ours is 1.543.
    public void Valve_seats_are_not_minus_log_survival()
    {
        var reference = ReferenceCase.Load("valve-seat-mcf");
        var mcf = MeanCumulativeFunction.Estimate([.. RecurrenceRows.Read(reference).Values]).Value;
        var wrong = reference.Expected("wrong_minus_log_survival_at_653");
        Assert.Equal(1.579, wrong, 3);
        Assert.True(Math.Abs(mcf.At(653)!.Value.Value - wrong) > 0.03);
    }

    [Fact] // survfit(Surv(start, stop, status) ~ 1, id) of R's survival package on constructed windows with gaps.
    public void Late_entry_and_gaps()
    {
        var reference = ReferenceCase.Load("mcf-window-observation");
        CheckAllVariances(reference, [.. RecurrenceRows.Read(reference).Values]);
    }

    [Theory] // Doganaksoy and Nelson 1998, braking grids of two batches; survfit by batch in R.
    [InlineData("first", true)]
    [InlineData("second", false)]
    public void Braking_grids_by_batch(string batch, bool first)
    {
        var reference = ReferenceCase.Load("braking-grids-two-batches");
        var last = reference.Parameter("last_unit_of_first_batch");
        var units = RecurrenceRows.Read(reference).Where(u => u.Key <= last == first).Select(u => u.Value).ToList();
        CheckAllVariances(reference, units, batch);
    }

    [Theory] // Simulated fleet, seed 20240602; R script recurrences.R.
    [InlineData("all", null)]
    [InlineData("location_1", "1")]
    [InlineData("location_5", "5")]
    [InlineData("location_9", "9")]
    public void Simulated_cracks(string name, string? location)
    {
        var reference = ReferenceCase.Load("sim2-cracks");
        var locations = reference.Text("location");
        var units = RecurrenceRows.Read(reference, i => location is null || locations[i] == location).Values.ToList();
        var mcf = MeanCumulativeFunction.Estimate(units).Value;
        var at = reference.ExpectedAll("at").Select(t => mcf.At(t)).ToList();
        reference.Equal(at.Select(p => p?.Value ?? 0), name, "value");
        reference.Equal(at.Select(p => (double)p!.Value.AtRisk), name, "at_risk");
        reference.Equal(at.Select(p => p is { } q ? q.StandardError * q.StandardError : 0), name, "var_robust");
        var poisson = MeanCumulativeFunction.Estimate(units, variance: McfVariance.Poisson).Value;
        reference.Equal(reference.ExpectedAll("at").Select(t => Math.Pow(poisson.At(t)!.Value.StandardError, 2)), name, "var_poisson");
    }

    [Fact] // By hand. A (0,10] fails at 4 and 4; B (0,10] never; C (5,10] at 7.
    public void Three_units_by_hand()
    {
        // At 4: two at risk, two events: 1. Influence A: (2-1)/2 = 1/2, B: -1/2; variance 1/2.
        // At 7: three at risk, one event: 1 + 1/3. A: 1/2 - 1/9 = 7/18, B: -11/18, C: 2/9; variance (49+121+16)/324.
        var mcf = MeanCumulativeFunction.Estimate(
            [new RecurrenceUnit(0, 10, 4, 4), new RecurrenceUnit(0, 10), new RecurrenceUnit(5, 10, 7)]).Value;
        Assert.Equal(2, mcf.Points.Count);
        Assert.Equal((2, 2), (mcf.Points[0].AtRisk, mcf.Points[0].Events));
        Assert.Equal(1, mcf.Points[0].Value, 14);
        Assert.Equal(0.5, Math.Pow(mcf.Points[0].StandardError, 2), 14);
        Assert.Equal((3, 1), (mcf.Points[1].AtRisk, mcf.Points[1].Events));
        Assert.Equal(4.0 / 3, mcf.Points[1].Value, 14);
        Assert.Equal(186.0 / 324, Math.Pow(mcf.Points[1].StandardError, 2), 14);
    }

    [Fact] // The rule start < t <= stop: an event at a unit's last hour counts, and one that enters at that hour is not at risk.
    public void A_unit_is_at_risk_after_its_start_up_to_its_stop()
    {
        var mcf = MeanCumulativeFunction.Estimate([new RecurrenceUnit(0, 100, 100), new RecurrenceUnit(100, 200, 150)]).Value;
        Assert.Equal([1, 1], mcf.Points.Select(p => p.AtRisk));
        Assert.Throws<ArgumentException>(() => new RecurrenceUnit(100, 200, 100));
        Assert.Throws<ArgumentException>(() => new RecurrenceUnit(100, 200, 200.1));
    }

    [Fact]
    public void A_single_unit_has_no_spread_and_says_so()
    {
        var mcf = MeanCumulativeFunction.Estimate([new RecurrenceUnit(0, 100, 20, 60)]).Value;
        Assert.Equal(McfVariance.Poisson, mcf.Variance);
        Assert.Equal(Math.Sqrt(2), mcf.Points[^1].StandardError, 12);
    }

    [Fact]
    public void Spans_that_nobody_watched_are_told()
    {
        var mcf = MeanCumulativeFunction.Estimate([new RecurrenceUnit(10, 50, 20), new RecurrenceUnit(80, 90)]).Value;
        Assert.Equal([new ObservationWindow(50, 80)], mcf.Unwatched);
        Assert.Equal((10, 90), (mcf.From, mcf.To));
    }

    [Fact]
    public void Nothing_watched_is_a_typed_reason_and_no_event_is_an_empty_function()
    {
        Assert.Equal(NotEstimableKind.NothingObserved, MeanCumulativeFunction.Estimate([]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NothingObserved, MeanCumulativeFunction.Estimate([new RecurrenceUnit(5, 5)]).Reason?.Kind);
        Assert.Empty(MeanCumulativeFunction.Estimate([new RecurrenceUnit(0, 5)]).Value.Points);
    }

    [Fact]
    public void Overlapping_windows_are_refused_and_touching_ones_joined()
    {
        Assert.Throws<ArgumentException>(() => new RecurrenceUnit([new(0, 10), new(5, 20)], []));
        Assert.Single(new RecurrenceUnit([new(10, 20), new(0, 10)], [10]).Windows);
    }

    [Fact] // Nelson 1995 as recomputed: robust errors at 404 and 653 days, 1.8925 replacements per 1,000 engine-days, 25,363 days.
    public void Valve_seats_errors_as_printed()
    {
        var mcf = MeanCumulativeFunction.Estimate([.. RecurrenceRows.Read(ReferenceCase.Load("valve-seat-mcf")).Values]).Value;
        Assert.Equal(0.1359, mcf.At(404)!.Value.StandardError, 4);
        Assert.Equal(0.3117, mcf.At(653)!.Value.StandardError, 4);
        Assert.Equal((38, 34), (mcf.At(581)!.Value.AtRisk, mcf.At(586)!.Value.AtRisk));
        Assert.Equal(25363, mcf.ExposureHours);
        Assert.Equal(1.8925, 1000 * mcf.Events / mcf.ExposureHours, 4);
    }

    [Fact] // Therneau and Grambsch 2000, data set 1: influences printed in 72nds; one event a unit is the Nelson-Aalen hazard.
    public void Six_lives_give_the_printed_influences()
    {
        var reference = ReferenceCase.Load("six-rows-with-ties");
        var units = reference.Lives().Select(l => new RecurrenceUnit(0, l.Lower, l.Failed ? [l.Lower] : [])).ToList();
        var mcf = MeanCumulativeFunction.Estimate(units).Value;
        reference.Equal(mcf.Points.Select(p => p.Value), "hazard");
        reference.Equal(mcf.Points.Take(2).Select(p => p.StandardError * p.StandardError), "hazard_influence_variance");
    }

    [Fact] // By hand: at 5 one unit is watched alone, so that its step has no spread.
    public void An_unbiased_variance_that_does_not_exist_is_a_typed_reason()
    {
        RecurrenceUnit[] units = [new(0, 3, 1), new(0, 9, 5)];
        Assert.Equal(NotEstimableKind.NoInformation, MeanCumulativeFunction.Estimate(units, variance: McfVariance.Unbiased).Reason?.Kind);
        Assert.Equal(McfVariance.Poisson, MeanCumulativeFunction.Estimate(units, variance: McfVariance.Poisson).Value.Variance);
    }

    /// <summary>Points with the robust variance, then the two others at every event age.</summary>
    private static void CheckAllVariances(ReferenceCase reference, IReadOnlyList<RecurrenceUnit> units, params string[] prefix)
    {
        CheckPoints(reference, MeanCumulativeFunction.Estimate(units).Value, prefix);
        reference.Equal(Squares(McfVariance.Poisson), [.. prefix, "var_poisson"]);
        reference.Equal(Squares(McfVariance.Unbiased), [.. prefix, "var_unbiased"]);

        IEnumerable<double> Squares(McfVariance variance) =>
            MeanCumulativeFunction.Estimate(units, variance: variance).Value.Points.Select(p => p.StandardError * p.StandardError);
    }

    private static void CheckPoints(ReferenceCase reference, MeanCumulativeFunction mcf, params string[] prefix)
    {
        reference.Equal(mcf.Points.Select(p => p.Time), [.. prefix, "time"]);
        reference.Equal(mcf.Points.Select(p => (double)p.AtRisk), [.. prefix, "at_risk"]);
        reference.Equal(mcf.Points.Select(p => (double)p.Events), [.. prefix, "events"]);
        reference.Equal(mcf.Points.Select(p => p.Value), [.. prefix, "value"]);
        reference.Equal(mcf.Points.Select(p => p.StandardError * p.StandardError), [.. prefix, "var_robust"]);
    }
}

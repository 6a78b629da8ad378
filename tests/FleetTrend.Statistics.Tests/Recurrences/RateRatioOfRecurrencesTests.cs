using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Statistics.Tests.Recurrences;

public sealed class RateRatioOfRecurrencesTests
{
    [Fact] // Doganaksoy and Nelson 1998, braking grids: coxph of R's survival package with robust errors.
    public void Braking_grids_Andersen_Gill()
    {
        var reference = ReferenceCase.Load("braking-grids-two-batches");
        var last = reference.Parameter("last_unit_of_first_batch");
        var units = RecurrenceRows.Read(reference);
        AssertAndersenGill(
            reference, [.. units.Where(u => u.Key <= last).Select(u => u.Value)], [.. units.Where(u => u.Key > last).Select(u => u.Value)]);
    }

    [Fact] // Simulated repairs, seed 20240604: coxph with clusters in R.
    public void Repairs_Andersen_Gill()
    {
        var (reference, first, second) = Repairs();
        AssertAndersenGill(reference, first, second);
    }

    [Fact] // The same: Poisson regression with model and sandwich errors in R.
    public void Repairs_Poisson()
    {
        var (reference, first, second) = Repairs();
        var ratio = RecurrenceRateRatio.Estimate(first, second).Value;
        reference.Equal(ratio.FirstEvents, "stop_drilled_events");
        reference.Equal(ratio.SecondEvents, "weld_repaired_events");
        reference.Equal(ratio.FirstExposureHours, "stop_drilled_exposure");
        reference.Equal(ratio.SecondExposureHours, "weld_repaired_exposure");
        reference.Equal(first.Concat(second).Sum(u => u.EventTimes.Count - u.EventTimes.Distinct().Count()), "same_site_same_time");
        reference.Equal(ratio.LogRatio, "poisson", "log_ratio");
        reference.Equal(ratio.ModelStandardError, "poisson", "model_se");
        reference.Equal(ratio.RobustStandardError, "poisson", "robust_se");
        Assert.Equal(Math.Exp(ratio.LogRatio + 1.959963985 * ratio.RobustStandardError), ratio.Ratio.Interval.Upper, 1e-7);
    }

    [Fact] // The same: negative binomial regression, glm.nb of the R package MASS.
    public void Repairs_negative_binomial()
    {
        var (reference, first, second) = Repairs();
        var ratio = NegativeBinomialRateRatio.Estimate(first, second).Value;
        reference.Equal(ratio.LogRatio, "negative_binomial", "log_ratio");
        reference.Equal(ratio.StandardError, "negative_binomial", "se");
        reference.Equal(ratio.Theta, "negative_binomial", "theta");
        reference.Equal(ratio.LogLikelihood, "negative_binomial", "log_likelihood");
        Assert.True(ratio.Ratio.Interval.Upper < 1);
    }

    [Fact] // Definition: counts that spread less than Poisson counts leave no extra variation, and the ratio is that of the rates.
    public void Even_counts_lie_on_the_boundary()
    {
        RecurrenceUnit[] one = [new(0, 10, 2, 4), new(0, 10, 3, 7)];
        RecurrenceUnit[] two = [new(0, 10, 1, 4, 6, 9), new(0, 10, 2, 5, 6, 8)];
        var ratio = NegativeBinomialRateRatio.Estimate(one, two).Value;
        Assert.Equal(double.PositiveInfinity, ratio.Theta);
        Assert.Equal(2, ratio.Ratio.Value, 12);
        Assert.Equal(RecurrenceRateRatio.Estimate(one, two).Value.ModelStandardError, ratio.StandardError, 12);
    }

    [Fact] // Definition: groups in the other order turn the ratio over.
    public void Sides_swap()
    {
        var (_, first, second) = Repairs();
        Assert.Equal(
            -AndersenGillFit.Estimate(first, second).Value.LogRatio, AndersenGillFit.Estimate(second, first).Value.LogRatio, 1e-10);
        Assert.Equal(
            -NegativeBinomialRateRatio.Estimate(first, second).Value.LogRatio,
            NegativeBinomialRateRatio.Estimate(second, first).Value.LogRatio, 1e-10);
    }

    [Fact]
    public void Groups_that_tell_nothing_give_typed_reasons()
    {
        RecurrenceUnit[] quiet = [new(0, 10)];
        RecurrenceUnit[] busy = [new(0, 10, 5)];
        Assert.Equal(NotEstimableKind.NoEvents, AndersenGillFit.Estimate(quiet, quiet).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoFiniteMaximum, AndersenGillFit.Estimate(quiet, busy).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoEvents, AndersenGillFit.Estimate(busy, [new RecurrenceUnit(20, 30)]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NothingObserved, RecurrenceRateRatio.Estimate(quiet, []).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoEvents, RecurrenceRateRatio.Estimate(quiet, quiet).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoFiniteMaximum, NegativeBinomialRateRatio.Estimate(quiet, busy).Reason?.Kind);
    }

    private static void AssertAndersenGill(
        ReferenceCase reference, IReadOnlyList<RecurrenceUnit> first, IReadOnlyList<RecurrenceUnit> second)
    {
        var fit = AndersenGillFit.Estimate(first, second).Value;
        reference.Equal(fit.LogRatio, "log_ratio");
        reference.Equal(fit.ModelStandardError, "model_se");
        reference.Equal(fit.RobustStandardError, "robust_se");
        reference.Equal(fit.ScoreChiSquare, "naive_score_chi_square");
        reference.Equal(fit.RobustScoreChiSquare, "robust_score_chi_square");
        Assert.True(fit.Ratio.Interval.Contains(fit.Ratio.Value));
    }

    private static (ReferenceCase Reference, List<RecurrenceUnit> First, List<RecurrenceUnit> Second) Repairs()
    {
        var reference = ReferenceCase.Load("sim4-recurrence-two-sample-mcf");
        var methodOf = reference.Counts("unit").Zip(reference.Text("method")).DistinctBy(p => p.First)
            .ToDictionary(p => p.First, p => p.Second);
        var units = RecurrenceRows.Read(reference).ToLookup(u => methodOf[u.Key], u => u.Value);
        return (reference, [.. units["stop_drilled"]], [.. units["weld_repaired"]]);
    }
}

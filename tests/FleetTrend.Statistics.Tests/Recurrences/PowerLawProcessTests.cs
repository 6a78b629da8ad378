using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Statistics.Tests.Recurrences;

public sealed class PowerLawProcessTests
{
    [Theory] // NIST e-Handbook 8.2.2.3 data; MIL-HDBK-189 (1981) appendix C; USS Halfbeak (Meeker and Escobar 1998): values in R.
    [InlineData("nist-power-law")]
    [InlineData("mil-hdbk-189-27-failures")]
    [InlineData("halfbeak-trend")]
    public void One_unit_from_age_zero(string id)
    {
        var reference = ReferenceCase.Load(id);
        var end = reference.Parameter("end");
        var unit = new RecurrenceUnit(0, end, reference.Column("time"));
        var fit = PowerLawProcess.Fit([unit], 0.9).Value;
        reference.Equal(fit.Exponent, "exponent");
        reference.Equal(fit.Lambda, "lambda");
        reference.Equal(fit.Scale, "scale");
        reference.Equal(fit.ExponentUnbiased.Value, "unbiased");
        reference.Equal(fit.Intensity(end), "intensity");
        reference.Equal(fit.LogLikelihood, "log_likelihood");
        reference.Equal(1 / fit.Intensity(end), "mtbf");
        reference.Equal(fit.Events, "events");
        reference.Equal([fit.ExponentInterval.Lower, fit.ExponentInterval.Upper], "exponent_90");
        Assert.Equal(PowerLawInterval.ExactChiSquare, fit.IntervalMethod);
    }

    [Fact] // Crow 1975, AMSAA TR-138: three systems to 200 h; printed lambda .461, beta .615, unbiased .598.
    public void Three_systems_time_truncated()
    {
        var reference = ReferenceCase.Load("amsaa-tr138-three-systems");
        var units = Systems(reference);
        var fit = PowerLawProcess.Fit(units, 0.9).Value;
        reference.Equal(fit.Exponent, "exponent");
        reference.Equal(fit.Lambda, "lambda");
        reference.Equal(fit.ExponentUnbiased.Value, "unbiased");
        reference.Equal([fit.ExponentInterval.Lower, fit.ExponentInterval.Upper], "exponent_90");
        reference.Equal(fit.LogLikelihood, "log_likelihood");
        reference.Equal([fit.ExponentWaldInterval.Lower, fit.ExponentWaldInterval.Upper], "exponent_wald_90");
        reference.Equal(fit.Intensity(reference.Parameter("end")), "intensity");
        reference.Equal(units.Select(u => ConditionalExponent.Build([u], Truncation.Time)!.SumLog), "sum_log");
    }

    [Fact] // The same report, each system ended by its last failure: .443, .626, conditional .575, unbiased .557.
    public void Three_systems_failure_truncated()
    {
        var reference = ReferenceCase.Load("amsaa-tr138-three-systems");
        var units = Systems(reference).ConvertAll(u => new RecurrenceUnit(0, u.EventTimes[^1], u.EventTimes));
        var fit = PowerLawProcess.Fit(units, truncation: Truncation.Event).Value;
        reference.Equal(fit.Exponent, "failure_truncated", "exponent");
        reference.Equal(fit.Lambda, "failure_truncated", "lambda");
        reference.Equal(fit.ExponentUnbiased.Value, "failure_truncated", "unbiased");
        var conditional = ConditionalExponent.Build(units, Truncation.Event)!;
        reference.Equal(conditional.Estimate, "failure_truncated", "conditional");
        reference.Equal(conditional.Informative, "failure_truncated", "informative");
    }

    [Theory] // MIL-HDBK-189 (1981) appendix C: exponent .716339, modified .689808, lambda .453842, MTBF 15.511.
    [InlineData("exponent")]
    [InlineData("lambda")]
    [InlineData("mtbf")]
    public void Mil_hdbk_as_printed(string name)
    {
        var reference = ReferenceCase.Load("mil-hdbk-189-27-failures");
        var unit = new RecurrenceUnit(0, 300, reference.Column("time"));
        var fit = PowerLawProcess.Fit([unit]).Value;
        var actual = name switch
        {
            "exponent" => fit.Exponent,
            "lambda" => fit.Lambda,
            _ => 1 / fit.Intensity(300),
        };
        Assert.Equal(1, actual / reference.Published(name), 1e-6);
        Assert.Equal(0.689808, fit.ExponentUnbiased.Value, 6);
    }

    [Fact] // MIL-HDBK-189 appendix C, grouped example: .752851, 1.529306; expected values solved in R.
    public void Grouped_counts()
    {
        var reference = ReferenceCase.Load("mil-hdbk-189-grouped");
        var (start, stop, events) = (reference.Column("start"), reference.Column("stop"), reference.Counts("events"));
        var fit = PowerLawProcess.FitCounts([.. start.Select((s, i) => new CountInterval(s, stop[i], events[i]))]).Value;
        reference.Equal(fit.Exponent, "exponent");
        reference.Equal(fit.Lambda, "lambda");
        reference.Equal(fit.Intensity(100), "intensity");
        reference.Equal(start.Select((s, i) => fit.MeanCount(stop[i]) - fit.MeanCount(s)), "expected_counts");
        reference.Equal(fit.LogLikelihood - reference.Expected("factorials"), "log_likelihood_with_factorials");
        reference.Equal(1 / fit.Intensity(100), "mtbf");
        reference.Equal((fit.MeanCount(100) - fit.MeanCount(80)) / 20, "last_span_intensity");
        Assert.True(fit.ExponentInterval.Contains(fit.Exponent) && fit.ScaleInterval.Contains(fit.Scale));
        Assert.Equal(NotEstimableKind.NoInformation, fit.ExponentUnbiased.Reason?.Kind);
    }

    [Fact] // Simulated fleet with late entry, seed 20240602 (true exponent 1): score equation solved in R.
    public void Many_units_with_late_entry()
    {
        var reference = ReferenceCase.Load("sim2-cracks");
        var fit = PowerLawProcess.Fit([.. RecurrenceRows.Read(reference).Values]).Value;
        reference.Equal(fit.Exponent, "power_law", "exponent");
        reference.Equal(fit.Lambda, "power_law", "lambda");
        reference.Equal(fit.LogLikelihood, "power_law", "log_likelihood");
        reference.Equal(fit.LogLikelihood - fit.LikelihoodRatio / 2, "power_law", "log_likelihood_constant");
        reference.Equal(fit.LikelihoodRatio, "power_law", "likelihood_ratio");
        reference.Equal(fit.ExponentStandardError, "power_law", "exponent_se");
        Assert.Equal(PowerLawInterval.ProfileLikelihood, fit.IntervalMethod);
        Assert.True(fit.ExponentInterval.Contains(1));
        // R's profile curvature gives a standard error of .0289201 (signif 6): the profile interval is near ± 1.96 of it.
        Assert.Equal(2 * 1.95996 * 0.0289201, fit.ExponentInterval.Upper - fit.ExponentInterval.Lower, 3);
    }

    [Fact] // Invariance: counts from ever narrower spans tend to the fit on exact ages.
    public void Narrow_spans_tend_to_exact_ages()
    {
        var reference = ReferenceCase.Load("nist-power-law");
        var times = reference.Column("time");
        var exact = PowerLawProcess.Fit([new RecurrenceUnit(0, 1500, times)]).Value;
        var spans = Enumerable.Range(0, 3000).Select(k => new CountInterval(k / 2.0, (k + 1) / 2.0, times.Count(t => t > k / 2.0 && t <= (k + 1) / 2.0)));
        var counted = PowerLawProcess.FitCounts([.. spans]).Value;
        Assert.Equal(exact.Exponent, counted.Exponent, 2);
        Assert.Equal(exact.Scale, counted.Scale, exact.Scale * 0.05);
        Assert.Equal(exact.ScaleInterval.Upper, counted.ScaleInterval.Upper, exact.ScaleInterval.Upper * 0.05);
    }

    [Fact]
    public void Data_that_cannot_tell_give_typed_reasons()
    {
        Assert.Equal(NotEstimableKind.NothingObserved, PowerLawProcess.Fit([]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoEvents, PowerLawProcess.Fit([new RecurrenceUnit(0, 10)]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.TooFewEvents, PowerLawProcess.Fit([new RecurrenceUnit(0, 10, 5)]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoFiniteMaximum, PowerLawProcess.Fit([new RecurrenceUnit(0, 10, 10, 10)]).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoFiniteMaximum, PowerLawProcess.Fit([new RecurrenceUnit(100, 200, 100.1, 100.2)]).Reason?.Kind);
        Assert.True(PowerLawProcess.Fit([new RecurrenceUnit(0, 10, 5, 5)]).IsEstimated);
    }

    private static List<RecurrenceUnit> Systems(ReferenceCase reference)
    {
        var (unit, time) = (reference.Counts("unit"), reference.Column("time"));
        return [.. unit.Distinct().Select(u => new RecurrenceUnit(0, reference.Parameter("end"), time.Where((_, i) => unit[i] == u)))];
    }
}

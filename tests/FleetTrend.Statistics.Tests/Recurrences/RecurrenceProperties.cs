using CsCheck;
using FleetTrend.Statistics.Recurrences;

namespace FleetTrend.Statistics.Tests.Recurrences;

/// <summary>Invariances that follow from the definitions, on random units with late entry, gaps and ties.</summary>
public sealed class RecurrenceProperties
{
    // Whole hours make ties; a unit has one or two windows and up to six events inside them.
    private static readonly Gen<RecurrenceUnit> GenUnit =
        from start in Gen.Int[0, 300]
        from length in Gen.Int[1, 400]
        from gap in Gen.Int[1, 200]
        from second in Gen.Int[0, 300]
        from at in Gen.Double[0.001, 1].List[0, 6]
        from inSecond in Gen.Bool.List[6, 6]
        let one = new ObservationWindow(start, start + length)
        let two = new ObservationWindow(start + length + gap, start + length + gap + second)
        select new RecurrenceUnit(
            [one, two],
            at.Select((share, i) => inSecond[i] && second > 0
                ? two.Start + Math.Ceiling(share * second)
                : one.Start + Math.Ceiling(share * length)));

    private static readonly Gen<List<RecurrenceUnit>> GenUnits = GenUnit.List[2, 25];

    [Fact]
    public void Order_of_units_changes_nothing() => GenUnits.Sample(units =>
    {
        var there = MeanCumulativeFunction.Estimate(units).Value;
        var back = MeanCumulativeFunction.Estimate([.. units.AsEnumerable().Reverse()]).Value;
        SamePoints(there, back, 1);
    });

    [Fact]
    public void Hours_rescale() => GenUnits.Sample(units =>
    {
        var scaled = units.ConvertAll(u => new RecurrenceUnit(
            u.Windows.Select(w => new ObservationWindow(4 * w.Start, 4 * w.Stop)), u.EventTimes.Select(t => 4 * t)));
        SamePoints(MeanCumulativeFunction.Estimate(units).Value, MeanCumulativeFunction.Estimate(scaled).Value, 4);
        if (PowerLawProcess.Fit(units).TryGetValue(out var fit))
        {
            var other = PowerLawProcess.Fit(scaled).Value;
            Assert.Equal(fit.Exponent, other.Exponent, 1e-6 * fit.Exponent);
            // In logarithms, where a scale too small for a number has all its digits too.
            Assert.Equal(Math.Log(4) + fit.LogScale, other.LogScale, 1e-9 * (1 + Math.Abs(other.LogScale)));
        }
    });

    [Fact] // Three units whose exponent is all but zero, so that the scale is too small for a number: its limits are still in order.
    public void A_scale_too_small_for_a_number_has_limits() => GenUnits.Sample(
        units => PowerLawProcess.Fit(units).Match(f => f.ScaleInterval.Lower <= f.ScaleInterval.Upper, _ => true), iter: 1, seed: "fynuhkWd3gj2");

    [Fact] // By definition: a unit watched from age zero to T has as many mean counts at T as events, and the mean at T is (T/scale)^exponent.
    public void Mean_counts_at_the_ends_of_windows_add_up_to_the_events() => GenUnits.Sample(units =>
    {
        if (!PowerLawProcess.Fit(units).TryGetValue(out var fit)) return;
        var expected = units.SelectMany(u => u.Windows).Where(w => w.Length > 0).Sum(w => fit.MeanCount(w.Stop) - fit.MeanCount(w.Start));
        Assert.Equal(1, expected / fit.Events, 1e-6 + (1e-11 / fit.Exponent));
    });

    [Fact]
    public void Splitting_a_window_changes_nothing() => GenUnits.Sample(units =>
    {
        var split = units.ConvertAll(u => new RecurrenceUnit(
            u.Windows.SelectMany(w => new[] { new ObservationWindow(w.Start, (w.Start + w.Stop) / 2), new((w.Start + w.Stop) / 2, w.Stop) }),
            u.EventTimes));
        SamePoints(MeanCumulativeFunction.Estimate(units).Value, MeanCumulativeFunction.Estimate(split).Value, 1);
    });

    [Fact]
    public void A_unit_never_watched_changes_nothing() => GenUnits.Sample(units =>
        SamePoints(
            MeanCumulativeFunction.Estimate(units).Value,
            MeanCumulativeFunction.Estimate([.. units, new RecurrenceUnit(50, 50)]).Value, 1));

    [Fact] // Twice the same units: the same mean, half the variance.
    public void Repeating_all_units_halves_the_variance() => GenUnits.Sample(units =>
    {
        var once = MeanCumulativeFunction.Estimate(units).Value;
        var twice = MeanCumulativeFunction.Estimate([.. units, .. units]).Value;
        for (var k = 0; k < once.Points.Count; k++)
        {
            Assert.Equal(once.Points[k].Value, twice.Points[k].Value, 1e-9);
            Assert.Equal(Square(once.Points[k].StandardError) / 2, Square(twice.Points[k].StandardError), 1e-9);
        }
    });

    [Fact] // The fast pass against the definition: sum over units of squared influences, unit by unit.
    public void Errors_equal_the_sum_of_squared_influences() => GenUnits.Sample(units =>
    {
        foreach (var point in MeanCumulativeFunction.Estimate(units).Value.Points.TakeLast(3))
            Assert.Equal(Variance(units, point.Time), Square(point.StandardError), 1e-9);
    });

    [Fact]
    public void Numbers_are_never_nan_and_limits_hold_the_value() => GenUnits.Sample(units =>
    {
        var points = MeanCumulativeFunction.Estimate(units).Value.Points;
        Assert.All(points, p => Assert.True(p.Lower <= p.Value && p.Value <= p.Upper && double.IsFinite(p.StandardError)));
        PowerLawProcess.Fit(units).Match(
            fit => fit.ExponentInterval.Contains(fit.Exponent) && double.IsFinite(fit.Scale) && double.IsFinite(fit.LogLikelihood)
                ? true : throw new InvalidOperationException($"{fit}"),
            _ => true);
        LaplaceTest.Test(units).Match(t => t.PValue is >= 0 and <= 1 ? true : throw new InvalidOperationException($"{t}"), _ => true);
    });

    [Fact] // All events at one age, one unit with all events, a million events: an answer.
    public void Extremes_have_an_answer()
    {
        var tied = MeanCumulativeFunction.Estimate([.. Enumerable.Range(0, 1000).Select(_ => new RecurrenceUnit(0, 100, 50, 50, 50))]).Value;
        Assert.Equal(3, tied.Points.Single().Value);
        Assert.True(tied.Points[0].StandardError < 1e-6);
        var million = Enumerable.Range(0, 1000).Select(u => new RecurrenceUnit(0.1, 100_000, Enumerable.Range(1, 1000).Select(k => k * 100.0 - u * 0.09)));
        Assert.Equal(1_000_000, MeanCumulativeFunction.Estimate([.. million]).Value.Events);
        Assert.Equal(1, PowerLawProcess.Fit([.. million]).Value.Exponent, 2);
    }

    private static double Variance(List<RecurrenceUnit> units, double until)
    {
        var times = units.SelectMany(u => u.EventTimes).Where(t => t <= until).Distinct().Order().ToList();
        return units.Sum(unit => Square(times.Sum(t =>
        {
            double atRisk = units.Count(u => u.Windows.Any(w => w.Contains(t)));
            var mean = units.Sum(u => u.EventTimes.Count(e => e == t)) / atRisk;
            return unit.Windows.Any(w => w.Contains(t)) ? (unit.EventTimes.Count(e => e == t) - mean) / atRisk : 0;
        })));
    }

    private static void SamePoints(MeanCumulativeFunction a, MeanCumulativeFunction b, double factor)
    {
        Assert.Equal(a.Points.Count, b.Points.Count);
        for (var k = 0; k < a.Points.Count; k++)
        {
            Assert.Equal(factor * a.Points[k].Time, b.Points[k].Time, 1e-9);
            Assert.Equal(a.Points[k].AtRisk, b.Points[k].AtRisk);
            Assert.Equal(a.Points[k].Value, b.Points[k].Value, 1e-9);
            Assert.Equal(Square(a.Points[k].StandardError), Square(b.Points[k].StandardError), 1e-9);
        }
    }

    private static double Square(double x) => x * x;
}

using CsCheck;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

/// <summary>What must not change an estimate, and how a change of unit must change it. Each follows from the likelihood's definition.</summary>
public sealed class LifeInvarianceTests
{
    private const int Cases = 25;

    private static readonly Gen<List<Life>> Sets =
        from seed in Gen.Int[0, 1_000_000]
        from count in Gen.Int[12, 80]
        from shape in Gen.Double[0.5, 6]
        select SimulatedLives.Make(seed, count, shape, scale: 1000);

    [Fact]
    public void Hours_rescale() => Gen.Select(Sets, Gen.Int[-3, 3].Select(p => Math.Pow(10, p))).Sample(
        (lives, factor) => SameUpToScale(lives, [.. lives.Select(l => new Life(l.Lower * factor, l.Upper * factor, l.Entry * factor))], factor),
        iter: Cases);

    [Fact]
    public void Order_of_rows_changes_nothing() => Sets.Sample(
        lives => SameUpToScale(lives, [.. lives.AsEnumerable().Reverse().OrderBy(l => l.Lower % 7)], 1), iter: Cases);

    [Fact]
    public void Rows_merged_into_counts_change_nothing() => Gen.Select(Sets, Gen.Int[2, 5]).Sample(
        (lives, times) => SameUpToScale(
            [.. lives.SelectMany(l => Enumerable.Repeat(l, times))],
            [.. lives.Select(l => new Life(l.Lower, l.Upper, l.Entry, times))],
            1),
        iter: Cases);

    [Fact]
    public void A_good_look_splits_a_life_without_effect() => Sets.Sample(lives => SameUpToScale(lives, Split(lives), 1), iter: Cases);

    /// <summary>
    /// Entries at some 1,000 h beside lives watched from new: at steep shapes the hazard at entry is so great that the rest was lost beside it.
    /// </summary>
    [Fact]
    public void Steep_shapes_with_late_entries_keep_their_digits() =>
        Sets.Sample(lives => SameUpToScale(lives, Split(lives), 1), seed: "bZmW8FhEpQ01", iter: 1, threads: 1);

    [Fact]
    public void A_life_observed_for_no_hours_changes_nothing() => Gen.Select(Sets, Gen.Double[0, 2000]).Sample(
        (lives, age) => SameUpToScale(lives, [.. lives, Life.GoodAt(age, age)], 1), iter: Cases);

    private static List<Life> Split(List<Life> lives) =>
    [
        .. lives.SelectMany<Life, Life>(l =>
        {
            var look = (l.Entry + l.Lower) / 2;
            return look > l.Entry && look < l.Lower ? [Life.GoodAt(look, l.Entry), new Life(l.Lower, l.Upper, look)] : [l];
        }),
    ];

    private static void SameUpToScale(List<Life> left, List<Life> right, double factor)
    {
        foreach (var distribution in Enum.GetValues<LifeDistribution>())
        {
            var (a, b) = (LifeFit.Fit(distribution, left), LifeFit.Fit(distribution, right));
            Assert.Equal(a.Reason?.Kind, b.Reason?.Kind);
            if (!a.IsEstimated) continue;
            Near(a.Value.Scale.Value * factor, b.Value.Scale.Value, 1e-6);
            Near(a.Value.Shape.Value, b.Value.Shape.Value, 1e-6);
            Near(a.Value.Scale.Interval.Lower * factor, b.Value.Scale.Interval.Lower, 1e-4);
            Near(a.Value.Scale.Interval.Upper * factor, b.Value.Scale.Interval.Upper, 1e-4);
            Near(a.Value.Quantile(0.1).Interval.Lower * factor, b.Value.Quantile(0.1).Interval.Lower, 1e-4);
        }

        var (first, second) = (TurnbullEstimate.Estimate(left), TurnbullEstimate.Estimate(right));
        Assert.Equal(first.Reason?.Kind, second.Reason?.Kind);
        if (!first.IsEstimated) return;
        Near(first.Value.LogLikelihood, second.Value.LogLikelihood, 1e-9);
        foreach (var age in (double[])[150, 500, 900, 1400])
        {
            var (x, y) = (first.Value.CdfBounds(age), second.Value.CdfBounds(age * factor));
            Assert.Equal(x.Least, y.Least, 1e-4);
            Assert.Equal(x.Greatest, y.Greatest, 1e-4);
        }
    }

    private static void Near(double expected, double actual, double relative)
    {
        if (double.IsInfinity(expected)) Assert.Equal(expected, actual);
        else Assert.InRange(actual, expected - (relative * Math.Abs(expected)) - 1e-12, expected + (relative * Math.Abs(expected)) + 1e-12);
    }
}

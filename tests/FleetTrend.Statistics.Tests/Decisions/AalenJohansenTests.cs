using System.Globalization;
using FleetTrend.Statistics.Decisions;
using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Decisions;

public sealed class AalenJohansenTests
{
    [Fact] // Test suite of R's survival package (mstate): probabilities by hand in 32nds.
    public void Four_states_by_hand()
    {
        var reference = ReferenceCase.Load("states-hand-calculation");
        var estimate = AalenJohansen.Estimate(Spans(reference), 4).Value;
        var times = reference.ExpectedAll("time");
        for (var k = 0; k < times.Length; k++)
            Near(reference.ExpectedRow(k, "chance"), estimate.At(times[k]), 1e-12);
    }

    [Fact] // Data set mgus2 of R's survival package: two competing ends, survfit with jackknife errors.
    public void Two_competing_ends()
    {
        var reference = ReferenceCase.Load("states-competing-ends");
        var (stop, to) = (reference.Column("stop"), reference.Text("to"));
        var spans = stop.Select((s, i) => new StateSpan($"{i}", 0, s, 0, Next(to[i]))).ToList();
        var estimate = AalenJohansen.Estimate(spans, 3).Value;
        var at = reference.ExpectedAll("at").Select(t => estimate.Points.Last(p => p.Time <= t)).ToList();
        reference.Equal(at.Select(p => p.Chances[0]), "none");
        reference.Equal(at.Select(p => p.Chances[1]), "progression");
        reference.Equal(at.Select(p => p.Chances[2]), "death");
        reference.Equal(at.Select(p => p.StandardErrors[1]), "error_progression");
        reference.Equal(at.Select(p => p.StandardErrors[2]), "error_death");
        // The delta method comes to the same errors, the other end taken for censoring to another, higher curve.
        reference.Equal(at.Select(p => p.StandardErrors[1]), "delta_error_progression");
        var alone = KaplanMeier.Estimate([.. stop.Select((s, i) => Next(to[i]) == 1 ? Life.FailedAt(s) : Life.GoodAt(s))]).Value;
        reference.Equal(reference.ExpectedAll("at").Select(t => 1 - alone.Survival(t)), "wrong_progression");
    }

    [Fact] // Constructed, with recoveries and late entry; survfit with states in R.
    public void Moves_back_and_forth()
    {
        var reference = ReferenceCase.Load("states-with-recovery");
        var estimate = AalenJohansen.Estimate(Spans(reference), 4).Value;
        var at = reference.ExpectedAll("at");
        for (var k = 0; k < at.Length; k++)
        {
            Near(reference.ExpectedRow(k, "chance"), estimate.At(at[k]), 1e-10);
            Near(reference.ExpectedRow(k, "error"), estimate.Points.Last(p => p.Time <= at[k]).StandardErrors, 1e-9);
        }
        reference.Equal(estimate.HoursInState(60), "hours_to_60");
        reference.Equal(estimate.Points.Select(p => p.Time), "time");
    }

    [Fact] // By hand: two units good at 0, one found leaking at 10, the other good at 10; the timing moves the change only.
    public void Timing_of_unseen_transitions_is_a_stated_assumption()
    {
        var histories = new[] { new LookHistory("A", [(0, 0), (10, 1)]), new LookHistory("B", [(0, 0), (10, 0)]) };
        IReadOnlyList<double> At(TransitionTiming timing, double age) =>
            AalenJohansen.Estimate([.. histories.SelectMany(h => h.Spans(timing))], 2).Value.At(age);
        Assert.Equal([0.5, 0.5], At(TransitionTiming.JustAfterLastLook, 0.1));
        Assert.Equal([1.0, 0.0], At(TransitionTiming.Midpoint, 4.9));
        Assert.Equal([0.5, 0.5], At(TransitionTiming.Midpoint, 5));
        Assert.Equal([1.0, 0.0], At(TransitionTiming.AsFound, 9.9));
        Assert.Equal([0.5, 0.5], At(TransitionTiming.AsFound, 10));
    }

    [Fact] // By hand: good at 0, eroded at 9, taken through leaking: moves at 3 and 6, and hours in each state add up.
    public void A_jump_may_pass_through_the_state_between()
    {
        var spans = new LookHistory("A", [(0, 0), (9, 2), (12, 2)]).Spans(TransitionTiming.Midpoint, throughAllStates: true);
        Assert.Equal([(0.0, 3.0, 0), (3.0, 6.0, 1), (6.0, 12.0, 2)], spans.Select(s => (s.Start, s.Stop, s.State)));
        Assert.Single(new LookHistory("A", [(0, 0), (9, 2)]).Spans(TransitionTiming.AsFound));
    }

    [Fact]
    public void Bad_spans_are_refused_and_empty_ones_give_typed_reasons()
    {
        Assert.Throws<ArgumentException>(() => new StateSpan("A", 0, 5, 1, 1));
        Assert.Throws<ArgumentException>(() => AalenJohansen.Estimate([new("A", 0, 5, 0, null), new("A", 4, 6, 0, 1)], 2));
        Assert.Throws<ArgumentException>(() => AalenJohansen.Estimate([new("A", 0, 5, 0, 3)], 2));
        Assert.Equal(NotEstimableKind.NothingObserved, AalenJohansen.Estimate([], 2).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoEvents, AalenJohansen.Estimate([new("A", 0, 5, 0, null)], 2).Reason?.Kind);
    }

    private static List<StateSpan> Spans(ReferenceCase reference)
    {
        var (unit, from, to) = (reference.Text("unit"), reference.Counts("from"), reference.Text("to"));
        var (start, stop) = (reference.Column("start"), reference.Column("stop"));
        return [.. unit.Select((u, i) => new StateSpan(u, start[i], stop[i], from[i], Next(to[i])))];
    }

    private static int? Next(string to) => to.Length == 0 ? null : int.Parse(to, CultureInfo.InvariantCulture);

    private static void Near(double[] expected, IReadOnlyList<double> actual, double tolerance)
    {
        Assert.Equal(expected.Length, actual.Count);
        for (var k = 0; k < expected.Length; k++)
            Assert.Equal(expected[k], actual[k], tolerance);
    }
}

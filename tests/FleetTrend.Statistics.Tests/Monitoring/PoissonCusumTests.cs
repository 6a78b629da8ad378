using FleetTrend.Statistics.Monitoring;
using FleetTrend.Statistics.Rates;

namespace FleetTrend.Statistics.Tests.Monitoring;

public sealed class PoissonCusumTests
{
    [Fact] // Constructed; likelihood-ratio weights of Rossi et al. 1999 in R.
    public void Varying_expectation_both_ways()
    {
        var reference = ReferenceCase.Load("poisson-cusum-varying-expectation");
        var looks = reference.Counts("observed").Zip(reference.Column("expected")).ToList();
        var up = new PoissonCusum(2, reference.Parameter("limit")).Run(looks);
        reference.Equal(up.Select(s => s.Sum), "upper");
        reference.Equal(1 + up.ToList().FindIndex(s => s.Signals), "first_signal");
        reference.Equal(new PoissonCusum(0.5, 2.5).Run(looks).Select(s => s.Sum), "lower");
        reference.Equal(up.Select(s => s.Excess), "excess");
        var ratio = RateEstimate.Estimate(looks.Sum(l => l.First), looks.Sum(l => l.Second)).Value;
        reference.Equal(ratio.Rate, "ratio");
        reference.Equal([ratio.Interval.Lower, ratio.Interval.Upper], "ratio_limits");
    }

    [Fact] // Constructed; reference value 1 / log 2 (Lucas 1985), set back after each signal, in R.
    public void Set_back_after_each_signal()
    {
        var reference = ReferenceCase.Load("poisson-cusum-reset");
        reference.Equal(PoissonCusum.ReferenceValue(2), "reference_value");
        var scale = Math.Log(2);
        var looks = reference.Counts("observed").Select(x => (x, 1.0)).ToList();
        var steps = new PoissonCusum(2, 4 * scale).Run(looks, resetAfterSignal: true);
        reference.Equal(steps.Select(s => s.Sum / scale), "path");
        reference.Equal(steps.Select((s, i) => (s, i)).Where(p => p.s.Signals).Select(p => p.i + 1.0), "signals");
        var running = new PoissonCusum(2, 4 * scale).Run(looks);
        reference.Equal(running.Select(s => s.Sum / scale), "path_without_reset");
        reference.Equal(running.Select(s => s.Sum), "log_likelihood_without_reset");
    }

    [Fact] // The chain's chance of a false signal within 40 looks is met by simulating the same constant pattern.
    public void Simulated_shares_meet_the_markov_chain()
    {
        // Ratio 2 at expectation log 2: each event adds log 2, each look takes log 2 off: counts less one, limit 4.
        var expected = Enumerable.Repeat(Math.Log(2), 40).ToList();
        var cusum = new PoissonCusum(2, 4 * Math.Log(2) - 1e-9);
        var exact = CusumRunLength.Compute(Math.Log(2), 1, 4).SignalWithin(40);
        var share = CusumLimit.SignalShares(expected, cusum, 1, 40000, 5)[^1];
        Assert.Equal(exact, share, 4 * Math.Sqrt(exact * (1 - exact) / 40000));
    }

    [Fact] // By its own definition, checked on fresh runs: at the chosen limit false calls stay at what was allowed.
    public void A_chosen_limit_keeps_its_promise()
    {
        var random = new Random(3);
        var fleet = Enumerable.Range(0, 25).Select(_ => (IReadOnlyList<double>)Enumerable.Range(0, 30)
            .Select(_ => 0.1 + 0.5 * random.NextDouble()).ToList()).ToList();
        var limit = CusumLimit.Choose(fleet, 2, 0.5, 2000, 1).Value;
        Assert.InRange(limit.FalseCalls, 0.45, 0.5);
        var fresh = fleet.Sum(e => CusumLimit.SignalShares(e, new PoissonCusum(2, limit.Limit), 1, 4000, 99)[^1]);
        Assert.Equal(0.5, fresh, 0.08);
        var troubled = CusumLimit.SignalShares(fleet[0], new PoissonCusum(2, limit.Limit), 3, 2000, 99)[^1];
        Assert.True(troubled > 0.9);
    }

    [Fact]
    public void Impossible_watches_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new PoissonCusum(1, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PoissonCusum(2, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PoissonCusum(2, 3).Run([(1, -0.1)]));
        Assert.Equal(NotEstimableKind.NothingObserved, CusumLimit.Choose([[0, 0]], 2, 0.1).Reason?.Kind);
        Assert.Equal(NotEstimableKind.NoInformation, CusumLimit.Choose([[1, 1]], 2, 1).Reason?.Kind);
    }
}

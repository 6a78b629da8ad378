using FleetTrend.Statistics.Monitoring;

namespace FleetTrend.Statistics.Tests.Monitoring;

public sealed class ExponentialCusumTests
{
    [Fact] // Constructed; reference value of the likelihood ratio (Lucas 1985) and the sum's path in R.
    public void Path_of_gaps()
    {
        var reference = ReferenceCase.Load("exponential-cusum");
        var cusum = new ExponentialCusum(reference.Parameter("expected"), reference.Parameter("watched"), reference.Parameter("limit"));
        Assert.Equal(GapDirection.Shorter, cusum.Direction);
        reference.Equal(cusum.Reference, "reference");
        var steps = cusum.Run(reference.Column("gap"));
        reference.Equal(steps.Select(s => s.Sum), "path");
        reference.Equal(1 + steps.ToList().FindIndex(s => s.Signals), "first_signal");
    }

    [Fact] // By hand: longer gaps watched for, reference log(2) / (1/100 - 1/200) = 138.63; 300, then 50, give 161.37 and 72.74.
    public void Longer_gaps()
    {
        var cusum = new ExponentialCusum(100, 200, 1000);
        Assert.Equal(GapDirection.Longer, cusum.Direction);
        Assert.Equal(200 * Math.Log(2), cusum.Reference, 9);
        Assert.Equal([161.37, 72.74], cusum.Run([300, 50]).Select(s => Math.Round(s.Sum, 2)));
    }

    [Fact] // Vardeman and Ray's problem (1985), Page's equation solved in R with kinks at piece ends.
    public void Run_lengths_equal_the_reference()
    {
        var reference = ReferenceCase.Load("exponential-cusum-run-lengths");
        var (h, k) = (reference.Column("shorter_limit"), reference.Column("shorter_reference"));
        reference.Equal(h.Select((_, i) => Shorter(1, k[i], h[i])), "shorter");
        reference.Equal(h.Select((_, i) => Shorter(reference.Parameter("shorter_shifted"), k[i], h[i])), "shorter_shifted");
        reference.Equal(h.Select((_, i) => ExponentialCusumRunLength.Mean(1, k[i], h[i], headStart: h[i] / 2).Value), "shorter_head");
        (h, k) = (reference.Column("longer_limit"), reference.Column("longer_reference"));
        reference.Equal(h.Select((_, i) => Longer(1, k[i], h[i])), "longer");
        reference.Equal(h.Select((_, i) => Longer(reference.Parameter("longer_shifted"), k[i], h[i])), "longer_shifted");
        reference.Equal(h.Take(2).Select((_, i) => Longer(1, k[i], h[i])), "closed_form_longer");
    }

    [Theory] // By hand, mean 1 and h at most k. Longer gaps: L(s) = 1 + L(0) - exp(s), so L(0) = exp(h)(1 + exp(k) - h) - 1.
    [InlineData(1, 1)]
    [InlineData(0.5, 3)]
    [InlineData(4, 5)]
    [InlineData(60, 90)]
    public void Longer_gaps_in_closed_form(double h, double k) =>
        Close(Math.Exp(h) * (1 + Math.Exp(k) - h) - 1, Longer(1, k, h));

    [Theory] // By hand, mean 1 and h at most k. Shorter gaps: L(s) = 1 + C exp(-s), C = exp(h) / (exp(k) - 1 - h).
    [InlineData(1, 2)]
    [InlineData(0.5, 0.9)]
    [InlineData(3, 3)]
    [InlineData(30, 40)]
    public void Shorter_gaps_in_closed_form(double h, double k)
    {
        Close(1 + Math.Exp(h) / (Math.Exp(k) - 1 - h), Shorter(1, k, h));
        Close(1 + Math.Exp(h) / (Math.Exp(k) - 1 - h) * Math.Exp(-h / 3), ExponentialCusumRunLength.Mean(1, k, h, headStart: h / 3).Value);
    }

    [Fact] // Hours or other units: the number of gaps does not care (definition).
    public void Units_do_not_matter() => Close(Shorter(1, 0.6, 4.2), Shorter(180, 108, 756));

    [Fact] // By the exponent of growth: with h up by 1, runs of mean 1 and k = 0.3 grow by exp(x), log(1 + x) = 0.3 x, x = 6.8818942 (uniroot in R).
    public void Very_long_runs_grow_by_their_exponent() => Assert.Equal(6.8818942, Math.Log(Shorter(1, 0.3, 31) / Shorter(1, 0.3, 30)), 1e-6);

    [Theory] // Small steps, large limits, and runs too long for double precision: a number or a typed reason.
    [InlineData(1e-6, 2)]
    [InlineData(0.01, 5)]
    [InlineData(0.9, 100)]
    [InlineData(5, 100)]
    [InlineData(0.3, 60)]
    [InlineData(0.3, 40)]
    public void Extreme_designs(double k, double h)
    {
        foreach (var direction in Enum.GetValues<GapDirection>())
        {
            var run = ExponentialCusumRunLength.Mean(1, k, h, direction);
            Assert.True(run.IsEstimated ? double.IsFinite(run.Value) && run.Value >= 1 : run.Reason.Kind == NotEstimableKind.DidNotConverge, $"{direction} {run}");
        }
    }

    [Fact]
    public void Impossible_watches_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new ExponentialCusum(100, 100, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ExponentialCusum(100, 50, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ExponentialCusum(100, 50, 10).Run([-1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => ExponentialCusumRunLength.Mean(1, 0.5, 101));
        Assert.Throws<ArgumentOutOfRangeException>(() => ExponentialCusumRunLength.Mean(1, 0.5, 2, headStart: 2));
    }

    private static double Shorter(double mean, double k, double h) => ExponentialCusumRunLength.Mean(mean, k, h).Value;

    private static double Longer(double mean, double k, double h) => ExponentialCusumRunLength.Mean(mean, k, h, GapDirection.Longer).Value;

    private static void Close(double expected, double actual) => Assert.Equal(expected, actual, 1e-9 * expected);
}

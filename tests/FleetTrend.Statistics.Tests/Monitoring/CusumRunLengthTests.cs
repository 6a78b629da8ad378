using FleetTrend.Statistics.Monitoring;

namespace FleetTrend.Statistics.Tests.Monitoring;

public sealed class CusumRunLengthTests
{
    [Fact] // Lucas 1985 Tables 2 to 5: 438, 333, 437, 318 for k = .25, h = 10, mean .25; digits by Markov chain in R.
    public void Lucas_tables()
    {
        var reference = ReferenceCase.Load("poisson-cusum-run-lengths");
        double[] found =
        [
            CusumRunLength.Compute(0.25, 1, 40, 4).Mean,
            CusumRunLength.Compute(0.25, 1, 40, 4, 20).Mean,
            CusumRunLength.Compute(0.25, 1, 40, 4, 0, CusumDirection.Lower).Mean,
            CusumRunLength.Compute(0.25, 1, 40, 4, 20, CusumDirection.Lower).Mean,
        ];
        reference.Equal(found[0], "lucas_upper");
        reference.Equal(found[1], "lucas_upper_head");
        reference.Equal(found[2], "lucas_lower");
        reference.Equal(found[3], "lucas_lower_head");
        Assert.Equal(reference.PublishedAll("lucas"), found.Select(f => Math.Round(f)));
    }

    [Fact] // The same R chain on a grid of reference values and limits, and with the other alarm rule.
    public void A_grid_of_designs()
    {
        var reference = ReferenceCase.Load("poisson-cusum-run-lengths");
        var (k, h) = (reference.Counts("k"), reference.Counts("h"));
        var (sound, shifted) = (reference.Column("mu0"), reference.Column("mu1"));
        reference.Equal(k.Select((_, i) => CusumRunLength.Compute(sound[i], k[i], h[i]).Mean), "sound");
        reference.Equal(k.Select((_, i) => CusumRunLength.Compute(shifted[i], k[i], h[i]).Mean), "shifted");
        reference.Equal(k.Select((_, i) => CusumRunLength.Compute(sound[i], k[i], h[i], alarm: CusumAlarm.Above).Mean), "sound_above");
        reference.Equal(new[] { 0.8, 1.3, 2 }.Select(m => CusumRunLength.Compute(m, 13, 47, 10).Mean), "tenths");
    }

    [Fact] // Definition: the mean is the sum over looks of the chance of not having signalled before.
    public void The_mean_is_the_sum_of_survival()
    {
        var distribution = CusumRunLength.Compute(1.5, 1, 5);
        var sum = Enumerable.Range(0, 500).Sum(n => 1 - distribution.SignalWithin(n));
        Assert.Equal(distribution.Mean, sum, 8);
    }

    [Fact] // By hand: reference 1, limit 1, so the first look with two events or more signals: 1 / (1 - 1.5 exp(-0.5)) from zero.
    public void One_state() => Assert.Equal(1 / (1 - 1.5 * Math.Exp(-0.5)), CusumRunLength.Compute(0.5, 1, 1).Mean, 10);

    [Theory] // Runs beyond what differences of chances near one can say grow by their exponent x, exp(x) per unit: mean (exp(x) - 1) = x k.
    [InlineData(0.5, 1, 1.2564312)]
    [InlineData(0.1, 1, 3.6149504)]
    public void Very_long_runs_grow_by_their_exponent(double mean, int reference, double exponent)
    {
        Assert.Equal(0, mean * (Math.Exp(exponent) - 1) - exponent * reference, 1e-6);
        var growth = Math.Log(CusumRunLength.Compute(mean, reference, 41).Mean / CusumRunLength.Compute(mean, reference, 40).Mean);
        Assert.Equal(exponent, growth, 1e-5);
    }

    [Fact] // Longer than double precision can say, or never: infinite, not a number that looks firm.
    public void A_run_without_end_is_infinite() =>
        Assert.Equal(double.PositiveInfinity, CusumRunLength.Compute(1e-9, 5, 300).Mean);
}

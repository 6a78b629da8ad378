using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

/// <summary>A hundred thousand rows, all ages different, in every mixture: an answer at the maximum, within the bound on the work.</summary>
public sealed class TurnbullScaleTests
{
    private const int Rows = 100_000;
    private const double Shape = 2.2;
    private const double Scale = 900;

    // The maximum is told by its gap (Turnbull 1976: no derivative in a mass is above 0 there), and by the distribution that the lives were drawn from:
    // at 900 h a share 1 - 1/e has failed, held to five standard errors of 50,000 exact ages, 5 root(0.23/50,000) = 0.011.
    [Theory]
    [InlineData(0.1, false)]
    [InlineData(0.5, false)]
    [InlineData(0.9, false)]
    [InlineData(0.5, true)]
    [InlineData(1.0, false)]
    public void Exact_ages_among_intervals_are_estimated_within_the_bound_on_the_work(double shareExact, bool lateEntry)
    {
        var lives = Mixed(shareExact, lateEntry);
        // A value at all means that the maximum came before the bound on the work, which no load of the machine moves.
        var estimate = TurnbullEstimate.Estimate(lives).Value;
        Assert.InRange(estimate.Gap, 0, 1e-7 * Rows);
        Assert.InRange(estimate.CdfBounds(Scale).Greatest, 0.621, 0.643);
        Assert.Equal(1, estimate.Masses.Sum(m => m.Mass), 1e-9);
    }

    // By hand: without censoring the estimate is the empirical distribution, so that by the i-th smallest of n ages i/n have failed.
    [Fact]
    public void Exact_ages_alone_are_the_empirical_distribution()
    {
        var lives = Mixed(1, lateEntry: false);
        var estimate = TurnbullEstimate.Estimate(lives).Value;
        foreach (var age in (double[])[100, 400, 900, 1500])
            Assert.Equal(lives.Count(l => l.Lower <= age) / (double)Rows, estimate.CdfBounds(age).Greatest, 1e-7);
    }

    private static Life[] Mixed(double shareExact, bool lateEntry)
    {
        var random = new Random(7);
        var lives = new Life[Rows];
        for (var i = 0; i < Rows; i++)
        {
            var entry = lateEntry && i % 3 == 0 ? Scale * random.NextDouble() : 0;
            var age = Scale * Math.Pow(Math.Pow(entry / Scale, Shape) - Math.Log(1 - random.NextDouble()), 1 / Shape);
            var lower = Math.Max(entry, age - (90 * random.NextDouble()));
            lives[i] = random.NextDouble() < shareExact ? Life.FailedAt(age, entry) : Life.FailedBetween(lower, Math.Max(age + 1e-6, lower + 90), entry);
        }

        return lives;
    }
}

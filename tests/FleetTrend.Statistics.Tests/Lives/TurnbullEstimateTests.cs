using FleetTrend.Statistics.Lives;

namespace FleetTrend.Statistics.Tests.Lives;

public sealed class TurnbullEstimateTests
{
    // Turnbull 1974; a slow case of the survival package's tests; Finkelstein and Wolfe 1985.
    [Theory]
    [InlineData("turnbull-1974")]
    [InlineData("zinsmeister")]
    [InlineData("breast-cosmesis")]
    public void Masses_equal_the_reference(string id)
    {
        var source = ReferenceCase.Load(id);
        AssertMasses(source, TurnbullEstimate.Estimate(source.Lives()).Value);
    }

    // R package KMsurv, data bcdeter, each arm.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Masses_of_an_arm_equal_the_reference(int arm)
    {
        var source = ReferenceCase.Load("breast-cosmesis-two-arms");
        var arms = source.Counts("arm");
        AssertMasses(source, TurnbullEstimate.Estimate(source.Lives(i => arms[i] == arm)).Value, $"arm_{arm}");
    }

    // Turnbull 1974, published survival to three digits.
    [Fact]
    public void The_published_survival_of_Turnbull_is_met()
    {
        var source = ReferenceCase.Load("turnbull-1974");
        var estimate = TurnbullEstimate.Estimate(source.Lives()).Value;
        var survival = source.ExpectedAll("age").Select(t => 1 - estimate.CdfBounds(t).Least).ToArray();
        source.Equal(survival, "survival");
        Assert.All(survival.Zip(source.PublishedAll("survival")), pair => Assert.Equal(pair.Second, pair.First, 0.0006));
    }

    // Nelson 1982 p. 409: with one look each the estimate is the isotonic regression of the share failed.
    [Fact]
    public void One_look_each_is_isotonic_regression()
    {
        var source = ReferenceCase.Load("turbine-wheels");
        var estimate = TurnbullEstimate.Estimate(source.Lives()).Value;
        source.Equal(source.ExpectedAll("look").Select(t => estimate.CdfBounds(t).Greatest), "cdf");
        source.Equal(estimate.LogLikelihood, "nonparametric_loglik");
        Assert.All(
            source.ExpectedAll("look").Zip(source.PublishedAll("cdf")),
            p => Assert.Equal(p.Second, estimate.CdfBounds(p.First).Greatest, 6e-5));
    }

    // Nelson 1982 p. 415: same looks for all, so that the estimate is the cumulative share; Meeker and Escobar 1998 chapter 3.
    [Theory]
    [InlineData("crack-inspections")]
    [InlineData("heat-exchanger")]
    public void Common_looks_give_products_of_shares(string id)
    {
        var source = ReferenceCase.Load(id);
        var estimate = TurnbullEstimate.Estimate(source.Lives()).Value;
        var expected = source.ExpectedAll("cdf");
        source.Equal(estimate.Masses.Take(expected.Length).Select(m => m.Cdf), "cdf");
        if (source.Has("nonparametric_loglik")) source.Equal(estimate.LogLikelihood, "nonparametric_loglik");
        if (id == "crack-inspections")
            Assert.All(estimate.Masses.Zip(source.PublishedAll("cdf")), p => Assert.Equal(p.Second, p.First.Cdf, 6e-5));
    }

    // Simulated, seed 20240601; EM with active-set Newton in R.
    [Fact]
    public void Gaskets_followed_from_new_equal_the_reference()
    {
        var source = ReferenceCase.Load("sim1-gaskets");
        Life[] fromNew = [.. source.Lives().Where(l => l.Entry == 0)];
        var estimate = TurnbullEstimate.Estimate(fromNew).Value;
        source.Equal(estimate.LogLikelihood, "from_new_loglik");
        source.Equal(source.ExpectedAll("cdf_age").Select(t => estimate.CdfBounds(t).Least), "cdf_least");
        source.Equal(source.ExpectedAll("cdf_age").Select(t => estimate.CdfBounds(t).Greatest), "cdf_greatest");
        Assert.True(estimate.Gap < 1e-8, $"gap {estimate.Gap}");
        AssertMasses(source, estimate, "from_new", "nonparametric");
        source.Equal(estimate.Lives, "from_new", "lives");
        source.Equal(estimate.Problem.CandidateCount, "from_new", "candidates");
        source.Equal(estimate.Masses.Count, "from_new", "support");
    }

    // Finkelstein and Wolfe 1985: the intervals that alone can carry mass, whether they do or not.
    [Fact]
    public void Candidate_intervals_equal_the_reference()
    {
        var source = ReferenceCase.Load("breast-cosmesis");
        var problem = TurnbullEstimate.Estimate(source.Lives()).Value.Problem;
        source.Equal(problem.Lower, "candidate_lower");
        source.Equal(problem.Upper, "candidate_upper");
    }

    // Simulated with seed 20240603: log-likelihood and bounds of the share failed by 300 and 600 h, each method of repair.
    [Theory]
    [InlineData("stop_drilled")]
    [InlineData("weld_repaired")]
    public void Repairs_equal_the_reference(string method)
    {
        var source = ReferenceCase.Load("sim3-repairs");
        var methods = source.Text("method");
        var estimate = TurnbullEstimate.Estimate(source.Lives(i => methods[i] == method)).Value;
        var bounds = source.ExpectedAll("cdf_age").Select(estimate.CdfBounds).ToList();
        source.Equal(estimate.LogLikelihood, $"{method}_npmle_loglik");
        source.Equal(bounds.Select(b => b.Least), $"{method}_cdf", "least");
        source.Equal(bounds.Select(b => b.Greatest), $"{method}_cdf", "greatest");
    }

    // By hand: late entries with exact ages. At 3: two at risk (entries 0, 0), at 5: the second of those and the one from 4.
    [Fact]
    public void Late_entry_with_exact_ages_is_the_product_limit()
    {
        var estimate = TurnbullEstimate.Estimate([Life.FailedAt(3), Life.FailedAt(6), Life.FailedAt(5, entry: 4)]).Value;
        Assert.Equal([3.0, 5, 6], estimate.Masses.Select(m => m.Upper));
        Assert.Equal(1 / 2.0, estimate.Masses[0].Mass, 9);
        Assert.Equal(1 / 4.0, estimate.Masses[1].Mass, 9);
        Assert.Equal(1 / 4.0, estimate.Masses[2].Mass, 9);
    }

    // By hand: of 10 lives entering at 100, 4 fail in (100, 200]; of 5 entering at 0, 1 fails in (0, 100], 1 in (100, 200].
    // Hazards: 1/5, then (4 + 1)/(10 + 4); the survival at 200 is 4/5 x 9/14.
    [Fact]
    public void Late_entry_with_common_looks_is_a_life_table()
    {
        var estimate = TurnbullEstimate.Estimate(
        [
            new Life(100, 200, 100, 4), new Life(200, double.PositiveInfinity, 100, 6),
            new Life(0, 100), new Life(100, 200), new Life(200, double.PositiveInfinity, 0, 3),
        ]).Value;
        Assert.Equal(1 / 5.0, estimate.Masses[0].Cdf, 9);
        Assert.Equal(1 - (4 / 5.0 * 9 / 14), estimate.Masses[1].Cdf, 9);
        Assert.Equal(double.PositiveInfinity, estimate.Masses[2].Upper);
    }

    [Fact]
    public void Nothing_to_estimate_is_a_reason()
    {
        Assert.Equal(NotEstimableKind.NothingObserved, TurnbullEstimate.Estimate([]).Reason!.Kind);
        Assert.Equal(NotEstimableKind.NoEvents, TurnbullEstimate.Estimate([Life.GoodAt(100)]).Reason!.Kind);
        Assert.Equal(
            NotEstimableKind.NoFiniteMaximum,
            TurnbullEstimate.Estimate([Life.FailedAt(60, entry: 50), Life.FailedAt(200, entry: 100), Life.GoodAt(300, entry: 100)]).Reason!.Kind);
    }

    // By hand: everything failed in one interval, whose whole mass is one.
    [Fact]
    public void All_failed_in_one_interval_is_one_mass()
    {
        var mass = Assert.Single(TurnbullEstimate.Estimate([new Life(100, 200, 0, 7), new Life(50, 250)]).Value.Masses);
        Assert.Equal(new TurnbullMass(100, 200, 1, 1), mass);
    }

    // Counts from 1 to 3,000 on 300 intervals, new and with late entry: the maximum is told by its gap (Turnbull 1976: no derivative in a mass
    // is above 0 there).
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Counts_from_one_to_thousands_reach_the_maximum(bool lateEntry)
    {
        for (var seed = 0; seed < 12; seed++)
        {
            var lives = Counted(seed, lateEntry);
            var outcome = TurnbullEstimate.Estimate(lives);
            Assert.True(outcome.IsEstimated, $"seed {seed}: {outcome}");
            Assert.InRange(outcome.Value.Gap, 0, 1e-10 * outcome.Value.Lives);
        }
    }

    // The bound on the work ends the search short of the maximum: a reason that says how far it came, and no estimate.
    [Fact]
    public void The_bound_on_the_work_ends_in_a_reason_with_the_gap()
    {
        var lives = Counted(9, lateEntry: false);
        var reason = TurnbullEstimate.Estimate(lives, workMax: 1).Reason;
        Assert.Equal(NotEstimableKind.DidNotConverge, reason?.Kind);
        Assert.Matches("still rises by [0-9.E+-]+ per life", reason!.Explanation);
        Assert.True(TurnbullEstimate.Estimate(lives).IsEstimated);
    }

    private static List<Life> Counted(int seed, bool lateEntry)
    {
        var random = new Random(seed);
        var lives = new List<Life>();
        for (var i = 0; i < 300; i++)
        {
            var lower = Math.Round(2000 * random.NextDouble(), 1);
            var width = Math.Round(20 + (280 * random.NextDouble()), 1);
            var count = (int)Math.Exp(Math.Log(3000) * random.NextDouble());
            var entry = lateEntry && random.Next(2) == 0 ? lower * random.NextDouble() : 0;
            lives.Add(random.Next(3) == 0 ? Life.GoodAt(lower, entry, count) : new Life(lower, lower + width, entry, count));
        }

        return lives;
    }

    private static void AssertMasses(ReferenceCase source, TurnbullEstimate estimate, params string[] path)
    {
        source.Equal(estimate.Masses.Select(m => m.Lower), [.. path, "lower"]);
        source.Equal(estimate.Masses.Select(m => m.Upper), [.. path, "upper"]);
        source.Equal(estimate.Masses.Select(m => m.Mass), [.. path, "mass"]);
        source.Equal(estimate.LogLikelihood, [.. path, "loglik"]);
    }
}

using FleetTrend.Observations;
using FleetTrend.Statistics.Lives;
using FleetTrend.Trends.RenewalAges;

namespace FleetTrend.Trends.Tests;

/// <summary>When to renew and how often to look: verdicts, limits of makers, and words.</summary>
public sealed class RenewalAgeTests
{
    // Ages that a Weibull law of the given shape puts evenly over 12 aircraft with two gaskets each, looked at every 20 h: F(age) = (i - 1/2)/24, so that
    // age = 900 (-ln(1 - F))^(1/shape). The best age and what it saves are those of Barlow and Proschan 1965 for the fitted law, worked out here from
    // their condition h(T) * mean up to T - F(T) = planned / (failure - planned), the mean by Simpson's rule.
    [Fact]
    public void Parts_that_wear_out_have_the_age_at_which_renewing_costs_least()
    {
        var lives = Lives(3.5);
        var age = Assert.Single(Find(Fleet(lives)));
        var law = LifeFit.Fit(LifeDistribution.Weibull, [.. lives.Select(l => Life.FailedBetween(l.Good, l.Bad))]).Value.Model;
        var cheapest = age.CheapestAge!.Value!.Value;
        Assert.Equal(1.0 / (5 - 1), (law.Hazard(cheapest) * MeanUpTo(law, cheapest)) - law.Cdf(cheapest), 6);
        Assert.Equal(1 - (((5 * law.Cdf(cheapest)) + law.Survival(cheapest)) / MeanUpTo(law, cheapest) * law.Mean / 5), age.Saved!.Value!.Value, 6);
        Assert.Equal((RenewalFinding.Renew, cheapest, 24, 24), (age.Finding, age.AgeHours, age.Failures, age.Lives));
        Assert.InRange(cheapest, age.CheapestAge.Lower!.Value, age.CheapestAge.Upper!.Value);
        Assert.True(age.Shape!.Lower > 1 && age.Saved.Lower > 0);
        // Good at a look, it fails within the longest interval with 5 %, in the last interval before the age, which is the worst.
        var longest = age.LongestLook!.Value!.Value;
        Assert.Equal(0.05, law.ConditionalFailure(cheapest - longest, longest), 6);
        Assert.Equal(law.ConditionalFailure(cheapest - 100, 100), age.ChanceAtSet!.Value!.Value, 6);
        var words = RenewalAgeWords.Statement(age);
        Assert.StartsWith("Exhaust gaskets, four: renewing a good one at ", words, StringComparison.Ordinal);
        Assert.Contains("if a failure in service costs 5.0 times a planned renewal. No limit of the maker has been told: look it up before using this age. Look every ", words,
            StringComparison.Ordinal);
        Assert.EndsWith(" No greatest look interval of the maker has been told: look it up.", words, StringComparison.Ordinal);
    }

    [Fact] // By definition: neither age nor interval exceeds what the maker allows, which is said.
    public void The_makers_limit_caps_the_age_and_the_interval()
    {
        var fleet = Fleet(Lives(3.5));
        var free = Assert.Single(Find(fleet));
        var capped = Assert.Single(Find(fleet, new TrendParameters { MakerLimits = [new("four", "gasket", 300, 40)] }));
        Assert.True(free.AgeHours > 300 && free.LookHours > 40);
        Assert.Equal((300, 40, free.CheapestAge!.Value), (capped.AgeHours, capped.LookHours, capped.CheapestAge!.Value));
        Assert.True(capped.Saved!.Value < free.Saved!.Value); // earlier than what costs least
        var words = RenewalAgeWords.Statement(capped);
        Assert.Contains("renewing a good one at 300 h saves", words, StringComparison.Ordinal);
        Assert.Contains("That is the maker's or the regulation's limit; by the costs alone it would be ", words, StringComparison.Ordinal);
        Assert.Contains("Look every 40 h at most, the maker's or the regulation's limit", words, StringComparison.Ordinal);
        var later = Assert.Single(Find(fleet, new TrendParameters { MakerLimits = [new(null, "gasket", 2000, 200)] }));
        Assert.Equal((free.AgeHours, free.LookHours), (later.AgeHours, later.LookHours));
        Assert.Contains("The maker's or the regulation's limit, 2,000 h, is later.", RenewalAgeWords.Statement(later), StringComparison.Ordinal);
        Assert.Equal(free.AgeHours, Assert.Single(Find(fleet, new TrendParameters { MakerLimits = [new("six", "gasket", 300, 40), new(null, "clamp", 300, 40)] })).AgeHours);
    }

    [Theory] // With a shape of 0.6 new ones fail sooner; by Barlow and Proschan no age pays at a shape of one or less.
    [InlineData(0.6)]
    [InlineData(0.45)]
    public void What_does_not_wear_out_is_not_renewed_by_age(double shape)
    {
        var age = Assert.Single(Find(Fleet(Lives(shape)), new TrendParameters { MakerLimits = [new(null, "gasket", 500, null)] }));
        Assert.True(age.Shape!.Upper < 1, $"{age.Shape.Upper}");
        Assert.Equal((RenewalFinding.DoesNotWearOut, null, null), (age.Finding, age.AgeHours, age.CheapestAge));
        Assert.StartsWith(
            "Exhaust gaskets, four: renewal by age does not help: it does not wear out. A new one fails sooner than an old one; look at how it is fitted. The maker's or the "
            + "regulation's limit, 500 h, holds all the same.", RenewalAgeWords.Statement(age), StringComparison.Ordinal);
        Assert.Equal(500, age.LookedAtUntilHours);
    }

    [Fact] // Where a failure costs little more than a planned renewal, even a part that wears out is run to failure.
    public void A_failure_that_costs_no_more_is_no_reason_to_renew()
    {
        var age = Assert.Single(Find(Fleet(Lives(2)), new TrendParameters { FailureCostRatio = 1.1 }));
        Assert.Equal((RenewalFinding.DoesNotWearOut, null), (age.Finding, age.AgeHours));
        Assert.Contains("At best it would save less than 5.0 % of the cost.", RenewalAgeWords.Statement(age), StringComparison.Ordinal);
    }

    [Fact] // A shape of about 1.3 from few failures, whose limits hold one: nothing firm, and what would tell.
    public void What_few_failures_leave_open_is_said()
    {
        var age = Assert.Single(Find(Fleet([.. Lives(1.3).Where((_, i) => i % 3 == 1)])));
        Assert.True(age.Shape!.Lower < 1 && age.Shape.Value > 1);
        Assert.Equal((RenewalFinding.NotShown, null, null), (age.Finding, age.AgeHours, age.Saved));
        Assert.True(age.FailuresToTell > age.Failures);
        Assert.Contains($"whether it wears out is not shown by 8 failures, so that no age is told. Some {age.FailuresToTell} would tell", RenewalAgeWords.Statement(age),
            StringComparison.Ordinal);
    }

    [Theory] // Fleets of one, two and five aircraft with nothing found, or one failure: no age and no interval.
    [InlineData(1, 0)]
    [InlineData(2, 0)]
    [InlineData(5, 0)]
    [InlineData(1, 1)]
    [InlineData(5, 1)]
    public void Without_failures_nothing_is_told(int aircraft, int failures)
    {
        var fleet = Enumerable.Range(0, aircraft).Select(i =>
        {
            var one = new FleetBuilder($"ZZ-A0{i}");
            return i < failures ? one.Life("exhaust/cyl-1/gasket", "gasket", 300, 400) : one.Life("exhaust/cyl-1/gasket", "gasket", 500);
        });
        var age = Assert.Single(Find([.. fleet.Select(f => f.Build())]));
        Assert.Equal((RenewalFinding.NotKnown, failures, aircraft), (age.Finding, age.Failures, age.Lives));
        Assert.Equal((null, null, null, null, null), (age.Shape, age.CheapestAge, age.AgeHours, age.LongestLook, age.LookHours));
        Assert.Contains("not enough data", RenewalAgeWords.Statement(age), StringComparison.Ordinal);
        Assert.EndsWith("More failures, found on more than one aircraft, would tell.", RenewalAgeWords.Statement(age), StringComparison.Ordinal);
    }

    [Fact] // One aircraft of five has every failure: what is its own can't be told from what parts do.
    public void All_failures_in_one_tail_are_not_enough()
    {
        var tail = new FleetBuilder("ZZ-A00");
        foreach (var (i, bad) in new[] { 300, 350, 420, 500, 550 }.Index())
            tail.Life($"exhaust/cyl-{i}/gasket", "gasket", bad - 50, bad);
        var fleet = Enumerable.Range(1, 4).Select(i => new FleetBuilder($"ZZ-A0{i}").Life("exhaust/cyl-1/gasket", "gasket", 500).Build()).Prepend(tail.Build());
        var age = Assert.Single(Find([.. fleet]));
        Assert.Equal((RenewalFinding.NotKnown, "not enough data: all 5 failures are on one aircraft"), (age.Finding, age.NotEnoughData));
    }

    [Fact]
    public void A_fleet_without_parts_has_nothing_to_tell() => Assert.Empty(Find([new FleetBuilder("ZZ-A00").Build()]));

    private static IReadOnlyList<RenewalAge> Find(IReadOnlyList<AircraftObservations> fleet, TrendParameters? parameters = null) =>
        FleetBuilder.Settle(Analyses.RenewalAges, new TypeGroupInputs("four", fleet, FleetBuilder.AsOf, parameters ?? new TrendParameters()));

    private static List<(double Good, double Bad)> Lives(double shape) =>
        [.. Enumerable.Range(0, 24).Select(i => 900 * Math.Pow(-Math.Log(1 - ((i + 0.5) / 24)), 1 / shape))
            .Select(a => (20 * Math.Floor(a / 20), (20 * Math.Floor(a / 20)) + 20))];

    // Each aircraft has lives from all over, so that aircraft are alike.
    private static List<AircraftObservations> Fleet(List<(double Good, double Bad)> lives) =>
    [
        .. lives.Index().GroupBy(l => l.Index % Math.Min(12, lives.Count)).Select(g => g.Aggregate(new FleetBuilder($"ZZ-A{g.Key:00}"),
            (a, l) => a.Life($"exhaust/cyl-{l.Index}/gasket", "gasket", l.Item.Good, l.Item.Bad)).Build()),
    ];

    private static double MeanUpTo(LifeModel law, double age)
    {
        const int steps = 2000;
        return Enumerable.Range(0, steps + 1).Sum(i => (i is 0 or steps ? 1 : i % 2 == 1 ? 4 : 2) * law.Survival(age * i / steps)) * age / steps / 3;
    }
}

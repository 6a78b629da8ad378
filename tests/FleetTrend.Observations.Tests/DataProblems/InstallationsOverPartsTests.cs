using FleetTrend.Observations.DataProblems;
using FleetTrend.Observations.Lives;
using FleetTrend.Records.Installations;
using static FleetTrend.Observations.Tests.InventedAircraft;

namespace FleetTrend.Observations.Tests.DataProblems;

/// <summary>
/// Rules 4 and 5: an installation renews, whether or not somebody wrote down that the part before it came out. That part is
/// right-censored at its last good look, and a person can see where that was assumed: once per aircraft and source.
/// </summary>
public class InstallationsOverPartsTests
{
    [Fact]
    public void A_shop_that_records_installations_only_has_one_line_per_aircraft_with_the_count_and_the_rows()
    {
        var seen = Shop().Observe();

        var problem = Assert.Single(seen.Problems);
        Assert.Equal(DataProblemKind.InstallationMismatch, problem.Kind);
        Assert.Equal(
            "3 installations from 2025-03-02 to 2025-07-30 over parts whose removal is not recorded; they count as taken out good. "
            + "cards records no removal of this aircraft.",
            problem.Description);
        Assert.Equal(Day(60), problem.Date);
        Assert.Equal(3, problem.Evidence.Count);
    }

    [Fact] // 500 h at the start; good at 650 h and at 750 h: 150 h and 50 h after going in at 700 h. No failure anywhere.
    public void The_part_before_is_censored_at_its_last_good_look()
    {
        var lives = new InventedAircraft()
            .Installed(1, 500, Gasket).Good(40, 650, Gasket).Installed(60, 700, Gasket).Good(90, 750, Gasket).Installed(120, 800, Gasket).Observe().Lives;

        Assert.Equal([LifeEnding.RemovedGood, LifeEnding.RemovedGood, LifeEnding.InService], lives.Select(l => l.Ending));
        Assert.Equal([150.0, 50.0], lives.Take(2).Select(l => l.LastGood.Value));
        Assert.All(lives, l => Assert.Null(l.FirstBad));
    }

    [Fact]
    public void Once_closed_a_habit_stays_closed_whatever_else_is_installed()
    {
        var before = Assert.Single(Shop().Observe().Problems);
        var after = Assert.Single(Shop().Installed(300, 990, OtherGasket).Observe().Problems);

        Assert.Equal((before.Identity, before.Fingerprint), (after.Identity, after.Fingerprint));
        Assert.Equal(4, after.Evidence.Count);
    }

    [Fact]
    public void Where_the_source_records_removals_a_missing_one_is_a_slip_and_a_further_one_opens_it_again()
    {
        InventedAircraft Careful() => Shop().Removed(220, 930, OtherGasket);
        var before = Assert.Single(Careful().Observe().Problems);
        var after = Assert.Single(Careful().Installed(300, 990, Gasket).Observe().Problems);

        Assert.DoesNotContain("records no removal", before.Description, StringComparison.Ordinal);
        Assert.Equal(before.Identity, after.Identity);
        Assert.NotEqual(before.Fingerprint, after.Fingerprint);
    }

    [Fact]
    public void Each_source_has_its_own_line()
    {
        var seen = Shop().Installed(230, 940, Gasket, source: "tablet").Observe();

        Assert.Equal(2, seen.Problems.Count);
        Assert.Equal(2, seen.Problems.Select(p => p.Identity).Distinct().Count());
        Assert.Contains(seen.Problems, p => p.Description.StartsWith("An installation at exhaust/cyl-3/gasket on 2025-08-19 over a part", StringComparison.Ordinal));
    }

    [Fact]
    public void With_every_removal_recorded_nothing_is_listed() =>
        Assert.Empty(new InventedAircraft()
            .Installed(1, 500, Gasket).Removed(60, 700, Gasket, RemovalReason.TimeLimit).Installed(60, 700, Gasket).Observe().Problems);

    /// <summary>Three installations over parts at two locations, and no removal.</summary>
    private static InventedAircraft Shop() => new InventedAircraft()
        .Installed(1, 500, Gasket).Installed(1, 500, OtherGasket)
        .Installed(60, 700, Gasket).Installed(120, 800, Gasket).Installed(210, 920, OtherGasket);
}

using FleetTrend.Observations;
using FleetTrend.Records;
using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Statistics.Lives;
using FleetTrend.Trends.Shrouds;

namespace FleetTrend.Trends.Tests;

/// <summary>Stop drills per shroud with the hours to renewal, and clamp bolts by the state of their hex; by hand.</summary>
public sealed class ShroudTests
{
    private const string Front = "exhaust/shroud/front-edge";
    private const string Rear = "exhaust/shroud/rear-edge";
    private const string Bolt = "exhaust/left/clamp-bolt";

    // By hand. A01: stop-drilled at 100 h (front) and 200 h (rear), the front replaced at 400 h: two stop drills, 300 h; then again at 500 h, in service at
    // 900 h: one, 400 h, with a crack open. A02: stop-drilled at 300 h, in service at 500 h: one, 200 h. A03: cracks replaced without a stop drill: none. By
    // 200 h none was renewed, and 300 (renewed) and 400 h are longer; by 500 h one was, and none was followed so long.
    [Fact]
    public void A_shroud_counts_from_its_first_stop_drill_to_its_renewal_at_either_edge()
    {
        var trend = Assert.Single(FleetBuilder.Find(Analyses.Shrouds, [
            Drilled(Drilled(Drilled(new FleetBuilder("ZZ-A01"), Front, 100, renewed: 400), Rear, 200), Front, 500)
                .Found(Front, "shroud-edge", 400, closedBy: ActionKind.Replaced, closedAt: 400, renewed: 400).Found(Rear, "shroud-edge", 850, open: true).Build(latest: At(900)),
            Drilled(new FleetBuilder("ZZ-A02"), Rear, 300).Build(latest: At(500)),
            new FleetBuilder("ZZ-A03").Found(Front, "shroud-edge", 400, closedBy: ActionKind.Replaced, closedAt: 400, renewed: 400).Build(latest: At(900))]));
        Assert.Equal((3, 1, 2.0), (trend.Shrouds, trend.Renewed, trend.StopDrillsAtRenewal));
        Assert.Equal((300, 300), (trend.FewestHours, trend.MostHours));
        Assert.Equal([(200, 0, 2), (500, 1, 0), (1000, 1, 0)], trend.Shares.Select(s => (s.Hours, s.Renewed, s.InService)));
        Assert.Equal(["not enough data: 1 of 3 renewed", "not enough data: none was followed so long"], trend.Shares.Take(2).Select(s => s.Share.NotEnoughData));
        Assert.Equal([("ZZ-A01", "exhaust/shroud", 1, 400, 1), ("ZZ-A02", "exhaust/shroud", 1, 200, 0)],
            trend.StopDrilled.Select(s => (s.Registration, s.Shroud, s.StopDrills, s.Hours, s.OpenCracks)));
        Assert.Equal("Of 3 shrouds with stop drills 1 was renewed, 300 h after the first one, with 2.0 stop drills on average.", ShroudWords.Shrouds(trend));
        Assert.Equal("ZZ-A01, shroud: 1 stop drill, the first 400 h ago on 15 May 2025, and 1 crack open", ShroudWords.Statement(trend.StopDrilled[0]));
    }

    // By hand, at 600 h: one bolt eroded and corroded: eroded counts; one corroded on another aircraft, one loose, one good, one that nobody looked at.
    [Fact]
    public void Bolts_count_by_the_state_that_leaves_least_for_a_wrench()
    {
        var trend = Assert.Single(FleetBuilder.Find(Analyses.Shrouds, [
            new FleetBuilder("ZZ-A01").LookedAt(Bolt, "clamp-bolt", 600).LookedAt("exhaust/right/clamp-bolt", "clamp-bolt", 600)
                .Life(Bolt, "clamp-bolt", 300, ageNow: 600)
                .Found(Bolt, "clamp-bolt", 300, Condition.Corrosion, open: true).Found(Bolt, "clamp-bolt", 500, Condition.Erosion, open: true).Build(latest: At(600)),
            new FleetBuilder("ZZ-A02").LookedAt(Bolt, "clamp-bolt", 600).LookedAt("exhaust/right/clamp-bolt", "clamp-bolt", null)
                .Found(Bolt, "clamp-bolt", 400, Condition.Corrosion, open: true)
                .Found(Bolt, "clamp-bolt", 100, Condition.Erosion, closedBy: ActionKind.Replaced).Build(latest: At(600)),
            new FleetBuilder("ZZ-A03").LookedAt(Bolt, "clamp-bolt", 600).Found(Bolt, "clamp-bolt", 500, Condition.Looseness, open: true).Build(latest: At(600)),
            new FleetBuilder("ZZ-A04").LookedAt(Bolt, "clamp-bolt", 600).Build(retired: FleetBuilder.Start.AddDays(600), latest: At(600))]));
        Assert.Equal(
            [(HexState.Good, 1, 1, null), (HexState.Corroded, 1, 1, null), (HexState.Eroded, 1, 1, 600.0),
                (HexState.OtherFinding, 1, 1, null), (HexState.NeverLookedAt, 1, 1, (double?)null)],
            trend.Bolts.Select(b => (b.State, b.Bolts, b.Aircraft, b.MeanAgeHours)));
        Assert.Equal([("ZZ-A03", HexState.OtherFinding, 100), ("ZZ-A01", HexState.Eroded, 100), ("ZZ-A02", HexState.Corroded, 200)],
            trend.BadBolts.Select(b => (b.Registration, b.State, b.HoursSince)));
        Assert.Equal("Of 5 clamp bolts: 1 with another finding, 1 eroded, 1 corroded, 1 good at the last look, 1 never looked at", ShroudWords.Bolts(trend));
        Assert.Equal("No shroud has a stop drill.", ShroudWords.Shrouds(trend));
    }

    // Shares are those of SharesFailed, which R has checked (shared-units-contrast): four shrouds renewed after 200 to 500 h, one in service for 400 h.
    [Fact]
    public void From_three_renewals_on_the_share_renewed_is_told()
    {
        var trend = Assert.Single(FleetBuilder.Find(Analyses.Shrouds, [
            .. Enumerable.Range(1, 4).Select(i => Drilled(new FleetBuilder($"ZZ-A0{i}"), Front, 100, renewed: 200 + (100 * i)).Build(latest: At(900))),
            Drilled(new FleetBuilder("ZZ-A05"), Front, 100).Build(latest: At(500))]));
        IReadOnlyList<Life>[] units = [[Life.FailedAt(200)], [Life.FailedAt(300)], [Life.FailedAt(400)], [Life.FailedAt(500)], [Life.GoodAt(400)]];
        var expected = SharesFailed.Estimate(LifeDistribution.Weibull, units, [200, 500]).Value;
        Assert.Equal(expected.Select(e => (double?)e.Value), trend.Shares.Take(2).Select(s => s.Share.Value));
        Assert.Equal(expected.Select(e => (double?)e.Interval.Upper), trend.Shares.Take(2).Select(s => s.Share.Upper));
        Assert.Equal([(1, 4), (4, 0)], trend.Shares.Take(2).Select(s => (s.Renewed, s.InService)));
    }

    [Theory] // Fleets of one, two and five aircraft, one stop drill: no median, and that is said.
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void Without_a_renewal_there_are_no_hours_to_it(int aircraft)
    {
        var trend = Assert.Single(FleetBuilder.Find(Analyses.Shrouds, [
            Drilled(new FleetBuilder("ZZ-A00"), Front, 300).Build(latest: At(500)),
            .. Enumerable.Range(1, aircraft - 1).Select(i => new FleetBuilder($"ZZ-A0{i}").Build(latest: At(500)))]));
        Assert.Equal((null, "not enough data: 0 of 1 renewed"), (trend.Shares[0].Share.Value, trend.Shares[0].Share.NotEnoughData));
        Assert.Equal("Of 1 shroud with stop drills none has been renewed yet.", ShroudWords.Shrouds(trend));
    }

    [Fact]
    public void A_fleet_with_neither_has_nothing_to_tell() => Assert.Empty(FleetBuilder.Find(Analyses.Shrouds, [new FleetBuilder("ZZ-A00").Build(latest: At(500))]));

    private static FleetBuilder Drilled(FleetBuilder fleet, string edge, double hours, double? renewed = null) =>
        fleet.Found(edge, "shroud-edge", hours, closedBy: ActionKind.StopDrilled, closedAt: hours, renewed: renewed, nextRenewed: renewed);

    private static HoursOnDate At(double hours) => new(FleetBuilder.Start.AddDays((int)hours), Hours.From(hours));
}

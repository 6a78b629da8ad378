using FleetTrend.Observations;
using FleetTrend.Records.Findings;
using FleetTrend.Trends.Levels;

namespace FleetTrend.Trends.Tests;

/// <summary>Whose rate a level is beside. Expected values by hand: at one location, where the others had n events in H hours, the rate of the
/// others is (1 + n) / (H / (n + 0.5) + H), one event more in the hours that it takes; see <see cref="ExpectationTests"/>.</summary>
public sealed class LevelTests
{
    private const string Weld = "exhaust/cyl-1/y-weld";

    [Fact] // Ten aircraft of 1,000 h, the first with 9 cracks, the others with 1 each: beside it 9 in 9,000 h, beside another 17 in 9,000 h.
    public void The_norm_of_an_aircraft_is_that_of_the_others()
    {
        var levels = Levels("four", [.. Enumerable.Range(0, 10).Select(i => Cracked($"ZZ-{i:00}", i == 0 ? 9 : 1).Build())]);
        Assert.Equal(1000 * Rate(9, 9000), levels["ZZ-00"].Expected, 9);
        Assert.Equal(1000 * Rate(17, 9000), levels["ZZ-01"].Expected, 9);
        Assert.InRange(levels["ZZ-00"].Ratio.Value!.Value, 2, 9 / levels["ZZ-00"].Expected); // between its like and what it shows
        Assert.True(levels["ZZ-00"].ChanceAboveOneAndAHalf > 0.95);
        Assert.All(levels.Values.Where(l => l.Registration != "ZZ-00"), l => Assert.True(l.ChanceAboveOneAndAHalf < 0.2));
    }

    [Fact] // Of four with 1 crack each and of six with 8 each, neither group runs high: each is beside its own.
    public void Groups_are_not_mixed()
    {
        var four = Enumerable.Range(0, 4).Select(i => Cracked($"ZZ-4{i}", 1).Build());
        var six = Enumerable.Range(0, 4).Select(i => Cracked($"ZZ-6{i}", 8, "six").Build());
        var snapshot = FleetBuilder.Compute([.. four, .. six], new TrendParameters(), FleetBuilder.AsOf, "test");
        Assert.Equal(8, snapshot.Levels.Count);
        Assert.All(snapshot.Levels, l => Assert.Equal(1000 * (l.TypeGroup == "four" ? Rate(3, 3000) : Rate(24, 3000)), l.Expected, 9));
        Assert.All(snapshot.Levels, l => Assert.InRange(1, l.Ratio.Lower!.Value, l.Ratio.Upper!.Value));
    }

    [Fact] // ZZ-1 had 400 h and a crack in one group, then 600 h in another; in each the other aircraft had 2 cracks in 1,000 h.
    public void An_aircraft_that_changed_group_has_a_level_in_both_each_of_its_own_hours()
    {
        AircraftObservations[] fleet =
        [
            new FleetBuilder("ZZ-1", typeGroup: "six").Watched(Weld, "y-weld", 0, 400, group: "four").Watched(Weld, "y-weld", 400, 1000)
                .Found(Weld, "y-weld", 350, group: "four").Build(),
            Cracked("ZZ-2", 2).Build(),
            Cracked("ZZ-3", 2, "six").Build(),
        ];
        var (four, six) = (Levels("four", fleet)["ZZ-1"], Levels("six", fleet)["ZZ-1"]);
        Assert.Equal((1, 0), (four.Found, six.Found));
        Assert.Equal(400 * Rate(2, 1000), four.Expected, 9);
        Assert.Equal(600 * Rate(2, 1000), six.Expected, 9);
    }

    [Fact] // The same hours at a location where the other cracks often, and at one where it does not.
    public void Expected_is_summed_location_by_location()
    {
        var other = new FleetBuilder("ZZ-B").Watched("exhaust/a", "y-weld", 0, 1000).Watched("exhaust/b", "y-weld", 0, 1000).Found("exhaust/b", "y-weld", 50);
        for (var k = 1; k <= 20; k++)
            other.Found("exhaust/a", "y-weld", 40 * k);
        var levels = Levels("four",
        [
            new FleetBuilder("ZZ-A").Watched("exhaust/a", "y-weld", 0, 1000).Build(), other.Build(),
            new FleetBuilder("ZZ-C").Watched("exhaust/b", "y-weld", 0, 1000).Build(),
        ]);
        Assert.InRange(levels["ZZ-A"].Expected / levels["ZZ-C"].Expected, 5, 20);
    }

    [Fact] // The others had none in 1,000 h: a rate that is low and not none, so that the ratio is told with both limits.
    public void Where_the_others_had_none_there_is_still_a_level()
    {
        var level = Levels("four", [Cracked("ZZ-A", 3).Build(), Cracked("ZZ-B", 0).Build()])["ZZ-A"];
        Assert.Equal(1000 * Rate(0, 1000), level.Expected, 9);
        Assert.True(level.Ratio.Lower > 0 && level.Ratio.Upper > level.Ratio.Value);
    }

    private static double Rate(int events, double hours) => (1 + events) / ((hours / (events + 0.5)) + hours);

    private static Dictionary<string, Level> Levels(string group, IReadOnlyList<AircraftObservations> fleet) => FleetBuilder.Find(Analyses.Levels, fleet, group)
        .Where(l => l.Registration is not null && l.Condition == Condition.Crack).ToDictionary(l => l.Registration!, StringComparer.Ordinal);

    private static FleetBuilder Cracked(string registration, int cracks, string group = "four")
    {
        var aircraft = new FleetBuilder(registration, typeGroup: group).Watched(Weld, "y-weld", 0, 1000);
        for (var k = 0; k < cracks; k++)
            aircraft.Found(Weld, "y-weld", 100 + (k * 100), ordinal: k + 1);
        return aircraft;
    }
}

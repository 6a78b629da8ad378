using FleetTrend.Observations;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Statistics.Norms;
using FleetTrend.Trends.Positions;

namespace FleetTrend.Trends.Tests;

/// <summary>Whether one cylinder or side is worse than the others of the same aircraft, by hand and in words.</summary>
public sealed class PositionTests
{
    private const string Weld = "flange-weld";

    [Theory]
    [InlineData("exhaust/cyl-3/flange-weld", 3, null)]
    [InlineData("induction/cylinder-12/tube", 12, null)]
    [InlineData("exhaust/left/y-weld", null, "left")]
    [InlineData("exhaust/muffler/inlet-right", null, "right")]
    [InlineData("exhaust/right/cyl-2/slip-joint", 2, "right")]
    [InlineData("exhaust/cyl-x/gasket", null, null)]
    [InlineData("exhaust/muffler/shell", null, null)]
    [InlineData("exhaust/upright/hanger", null, null)]
    public void A_path_tells_cylinder_and_side(string path, int? cylinder, string? side) =>
        Assert.Equal((cylinder, side), (LocationPosition.Cylinder(path), LocationPosition.Side(path)));

    // By hand: eight aircraft with one crack each at No. 3 and none elsewhere. The chance that all eight are at one cylinder of four by its name is (1/4)^8,
    // twice that 2/65,536; allowing for the comparisons of all four cylinders, of which each can be called, four times as much. Each of the others has none
    // of eight: (3/4)^8, twice 0.2002, three times as much after No. 3.
    [Fact]
    public void A_cylinder_that_cracks_on_every_aircraft_is_called()
    {
        var trend = Assert.Single(Settled([.. Enumerable.Range(1, 8).Select(i => Engine($"ZZ-A{i:00}").Found(At(3), Weld, 500).Build())]));
        Assert.Equal(
            ("four", Weld, Condition.Crack, PositionSort.Cylinder, 8),
            (Assert.Single(trend.TypeGroups), trend.Kind, trend.Condition, trend.Sort, trend.Aircraft));
        Assert.Equal(["1", "2", "3", "4"], trend.Positions.Select(p => p.Name));
        Assert.Equal([0, 0, 8, 0], trend.Positions.Select(p => p.Findings));
        Assert.All(trend.Positions, p => Assert.Equal(8000, p.ExposureHours));
        Assert.Equal(2 / 65536.0, trend.Positions[2].PValue!.Value, 10);
        Assert.Equal(8 / 65536.0, trend.Positions[2].AdjustedPValue!.Value, 10);
        Assert.Equal(3 * 2 * Math.Pow(0.75, 8), trend.Positions[0].AdjustedPValue!.Value, 10);
        Assert.Equal(
            [PositionFinding.NoneShown, PositionFinding.NoneShown, PositionFinding.MoreOften, PositionFinding.NoneShown],
            trend.Positions.Select(p => p.Finding));
        Assert.Equal(
            "No. 3 had all 8 cracks at welds of flange to stack, on 8 aircraft: the others had none. If the cylinders of an aircraft were alike, a difference this "
            + "large would come up less than once in 1,000, all comparisons allowed for.", PositionWords.Verdict(trend));
    }

    [Fact] // Twelve cracks on one aircraft: that aircraft's weld, not the cylinder.
    public void Many_cracks_on_one_aircraft_are_no_worse_cylinder()
    {
        var one = Engine("ZZ-A01");
        for (var i = 1; i <= 12; i++)
            one.Found(At(3), Weld, 50 * i);
        var trend = Assert.Single(Settled([one.Build(), .. Enumerable.Range(2, 7).Select(i => Engine($"ZZ-A{i:00}").Build())]));
        Assert.All(trend.Positions, p => Assert.Equal((null, PositionFinding.TooFew), (p.PValue, p.Finding)));
        Assert.Equal("No. 3 had all 12 cracks at welds of flange to stack, on 1 aircraft: too few to tell.", PositionWords.Verdict(trend));
    }

    // By hand: No. 3 has 9 of 24 cracks, each other five; 9 x 3 / 15 = 1.8 times the others. Nobody would call that.
    [Fact]
    public void The_cylinder_with_most_is_not_called_for_having_most()
    {
        List<AircraftObservations> fleet = [];
        for (var i = 0; i < 24; i++)
            fleet.Add(Engine($"ZZ-B{i:00}").Found(At(i < 9 ? 3 : i % 3 == 0 ? 1 : i % 3 == 1 ? 2 : 4), Weld, 500).Build());
        var trend = Assert.Single(Settled(fleet));
        Assert.Equal([5, 5, 9, 5], trend.Positions.Select(p => p.Findings));
        Assert.Equal(1.8, trend.Positions[2].TimesOthers!.Value!.Value, 12);
        Assert.Equal("No. 3 had 9 of 24 cracks at welds of flange to stack, on 9 aircraft: no more often than chance allows.", PositionWords.Verdict(trend));
    }

    // Sides: the left has cracked on nine aircraft and the right on none. By hand twice (1/2)^9 = 0.0039; one comparison, not two.
    [Fact]
    public void Two_sides_are_compared_once()
    {
        var trend = Assert.Single(Settled([.. Enumerable.Range(1, 9).Select(i => new FleetBuilder($"ZZ-A{i:00}")
            .Watched("exhaust/left/y-weld", "y-weld", 0, 900).Watched("exhaust/right/y-weld", "y-weld", 0, 900).Found("exhaust/left/y-weld", "y-weld", 500).Build())]));
        Assert.Equal(PositionSort.Side, trend.Sort);
        Assert.Equal((1 / 256.0, 1 / 256.0), (trend.Positions[0].PValue!.Value, trend.Positions[0].AdjustedPValue!.Value));
        Assert.Equal((null, null), (trend.Positions[1].PValue, trend.Positions[1].TimesOthers));
        Assert.StartsWith("The left side had all 9 cracks at welds of a Y joint, on 9 aircraft: the other had none. If the sides of an aircraft", PositionWords.Verdict(trend), StringComparison.Ordinal);
    }

    // Two type groups with four cylinders stand together, one with six apart; findings present at entry count in none. Four aircraft of each of the two
    // crack at No. 3: together (1/4)^8 as above, times the four comparisons; the six-cylinder group has three cracks, 2 (1/6)^3 < 5 %, so that its six are
    // compared too.
    [Fact]
    public void Type_groups_with_the_same_positions_stand_together()
    {
        AircraftObservations[] fleet =
        [
            .. Enumerable.Range(1, 4).Select(i => Engine($"ZZ-A{i}").Found(At(3), Weld, 500).Found(At(1), Weld, 0, atEntry: true).Build()),
            .. Enumerable.Range(1, 4).Select(i => Engine($"ZZ-B{i}", group: "four-slip").Found(At(3), Weld, 500).Build()),
            .. Enumerable.Range(1, 3).Select(i => Engine($"ZZ-C{i}", 6, "six").Found(At(i), Weld, 500).Build()),
        ];
        var all = FleetBuilder.Compute(fleet, new TrendParameters(), FleetBuilder.AsOf, "test").Positions;
        Assert.Equal([["four", "four-slip"], ["six"]], all.Select(t => t.TypeGroups));
        Assert.Equal(2 / 65536.0, all[0].Positions[2].PValue!.Value, 10);
        Assert.Equal(10 * 2 / 65536.0, all[0].Positions[2].AdjustedPValue!.Value, 10);
        Assert.Equal((PositionFinding.MoreOften, 8, 8000), (all[0].Positions[2].Finding, all[0].Positions[2].Findings, all[0].Positions[2].ExposureHours));
        Assert.Equal(6, all[1].Positions.Count(p => p.PValue is not null));
        Assert.Equal(all, Analyses.Positions.Order(all), new SameVerdicts());
    }

    [Fact] // Hours that differ: cylinder 2 was watched half as long, so that one crack there counts as much as two at the other.
    public void Hours_count()
    {
        var engine = new FleetBuilder("ZZ-A01").Watched(At(1), Weld, 0, 1000).Watched(At(2), Weld, 0, 500)
            .Found(At(1), Weld, 400).Found(At(1), Weld, 300).Found(At(2), Weld, 400);
        var trend = Assert.Single(Settled([engine.Build()]));
        Assert.Equal(1, (trend.Positions[1].TimesOthers ?? trend.Positions[0].TimesOthers)!.Value!.Value, 12);
        var stored = Assert.Single(trend.WithFindings);
        Assert.Equal([10000, 5000], stored.ExposureTenths!);
        Assert.Equal(PositionContrast.Estimate([stored.ToUnit()])[0]!.Interval.Lower, trend.Positions[0].TimesOthers!.Lower!.Value, 12);
    }

    [Theory] // Fleets of one, two and five aircraft, one finding, all in one tail: nothing firm.
    [InlineData(1, 1)]
    [InlineData(2, 1)]
    [InlineData(5, 1)]
    [InlineData(5, 3)]
    [InlineData(1, 6)]
    public void Little_is_said_of_little(int aircraft, int findings)
    {
        var fleet = Enumerable.Range(0, aircraft).Select(i => Engine($"ZZ-A0{i}")).ToList();
        for (var i = 0; i < findings; i++)
            fleet[0].Found(At(2), Weld, 100 + (100 * i));
        var trend = Assert.Single(Settled([.. fleet.Select(f => f.Build())]));
        Assert.All(trend.Positions, p => Assert.Equal(PositionFinding.TooFew, p.Finding));
        Assert.EndsWith("on 1 aircraft: too few to tell.", PositionWords.Verdict(trend), StringComparison.Ordinal);
        Assert.StartsWith(findings == 1 ? "No. 2 had the one crack at" : $"No. 2 had all {findings} cracks at", PositionWords.Verdict(trend), StringComparison.Ordinal);
    }

    [Fact]
    public void A_fleet_without_findings_has_nothing_to_tell() => Assert.Empty(Settled([Engine("ZZ-A00").Build()]));

    private static string At(int cylinder) => $"exhaust/cyl-{cylinder}/flange-weld";

    private static FleetBuilder Engine(string registration, int cylinders = 4, string group = "four")
    {
        var engine = new FleetBuilder(registration, typeGroup: group);
        for (var i = 1; i <= cylinders; i++)
            engine.Watched(At(i), Weld, 0, 1000);
        return engine;
    }

    private static List<PositionTrend> Settled(IReadOnlyList<AircraftObservations> fleet) =>
        [.. Analyses.Positions.Order(FleetBuilder.Find(Analyses.Positions, fleet))];

    private sealed class SameVerdicts : IEqualityComparer<PositionTrend>
    {
        public bool Equals(PositionTrend? x, PositionTrend? y) => x!.TypeGroups.SequenceEqual(y!.TypeGroups) && x.Positions.SequenceEqual(y.Positions);

        public int GetHashCode(PositionTrend obj) => 0;
    }
}

using FleetTrend.Records.Findings;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.Rates;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>What the pages of locations say. Expected words are derived by hand from made-up rates and levels.</summary>
public sealed class LocationsSectionTests
{
    private const string Third = "exhaust/cyl-3/flange-weld";
    private const string Fourth = "exhaust/cyl-4/flange-weld";

    [Fact]
    public void A_location_stands_out_where_its_chance_is_high()
    {
        Assert.Equal(
            "11 cracks, most at cyl 3 flange weld (8). Cyl 3 flange weld probably runs above 1.5 times the others of its kind.",
            LocationsSection.Statement(Fleet(0.8), Condition.Crack));
        Assert.Equal("8 cracks on 2 of 11 aircraft: 2.5 times what the others of its kind have (95 % interval 1.4 to 4.1).", LocationsSection.StatementOfOne(Fleet(0.8), Third));
    }

    [Fact]
    public void One_that_may_be_chance_is_not_said_to_stand_out()
    {
        Assert.Equal("11 cracks, most at cyl 3 flange weld (8). Beside the others of its kind no location stands out.", LocationsSection.Statement(Fleet(0.79), Condition.Crack));
        Assert.StartsWith("8 cracks on 2 of 11 aircraft. Beside the others of its kind it does not stand out: 2.5 times", LocationsSection.StatementOfOne(Fleet(0.79), Third), StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_found_and_nothing_beside_it_are_said()
    {
        var empty = Snapshot() with { Rates = [Rate(Third, 0)], Levels = [] };
        Assert.Equal("No cracks counted at any location: that does not show that there are none.", LocationsSection.Statement(empty, Condition.Crack));
        Assert.Equal("Nothing was counted here: that does not show that nothing is here.", LocationsSection.StatementOfOne(empty, Third));
        var alone = Snapshot() with { Rates = [Rate(Third, 1, new AircraftEvents("ZZ-A07", 1, 400))], Levels = [] };
        Assert.Equal("1 crack on 1 of 11 aircraft; no other location of its kind is watched, so nothing is beside it.", LocationsSection.StatementOfOne(alone, Third));
    }

    [Fact]
    public void A_location_has_its_conditions_the_aircraft_behind_it_and_its_like()
    {
        List<ReportSection> sections = [.. LocationsSection.ComposeOne(Fleet(0.8), Third)];
        Assert.Equal(["conditions", "of-1", "methods"], sections.Select(s => s.Name));
        var tables = sections[1].Blocks.OfType<Block.Table>().ToList();
        Assert.Equal(["ZZ-A07", "ZZ-A02"], tables[0].Rows.Select(r => Assert.IsType<Run.Link>(r[0].Runs[0]).Text));
        Assert.Equal(["Here", "Cyl 4 flange weld"], tables[1].Rows.Select(r => r[0].Runs[0] switch { Run.Strong s => s.Text, Run.Link l => l.Text, _ => "" }));
        Assert.Equal("/locations/trainer-4/exhaust/cyl-4/flange-weld", Assert.IsType<Run.Link>(tables[1].Rows[1][0].Runs[0]).Target.ToString());
    }

    [Fact]
    public void All_locations_stand_in_one_table_most_found_first()
    {
        var table = LocationsSection.Compose(Fleet(0.8), Condition.Crack).Blocks.OfType<Block.Table>().Single();
        Assert.Equal(["Cyl 3 flange weld", "Cyl 4 flange weld"], table.Rows.Select(r => Assert.IsType<Run.Link>(r[0].Runs[0]).Text));
        Assert.Equal("2 of 11", Assert.IsType<Run.Plain>(table.Rows[0][2].Runs[0]).Text);
        Assert.Equal("none beside it", Assert.IsType<Run.Plain>(table.Rows[1][4].Runs[0]).Text);
    }

    private static TrendSnapshot Fleet(double chance) => Snapshot() with
    {
        Rates = [Rate(Fourth, 3, new AircraftEvents("ZZ-A03", 3, 900)), Rate(Third, 8, new AircraftEvents("ZZ-A07", 6, 1_000), new AircraftEvents("ZZ-A02", 2, 700))],
        Levels =
        [
            Level(8, Condition.Crack) with
            {
                Registration = null, Base = null, Location = Third, ChanceAboveOneAndAHalf = chance, Ratio = InventedFigures.Ratio(2.5, 1.4, 4.1, 8, 12_000),
            },
        ],
    };

    private static RateTrend Rate(string location, int events, params AircraftEvents[] aircraft) => new()
    {
        TypeGroup = Trainer,
        Kind = "flange-weld",
        Location = location,
        Condition = Condition.Crack,
        Rate = InventedFigures.Rate(events, 12_000, events / 12.0, events / 20.0, events / 7.0),
        AircraftCount = 11,
        PresentAtEntryCount = 0,
        RepeatCount = 0,
        Aircraft = aircraft,
    };
}

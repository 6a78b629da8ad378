using FleetTrend.Observations;
using FleetTrend.Observations.Lives;
using FleetTrend.Trends.PartNumbers;

namespace FleetTrend.Trends.Tests;

/// <summary>Part numbers beside each other, by hand and in words.</summary>
public sealed class PartNumberTests
{
    // By hand. G-1: three lives on two aircraft, failed between 300 and 400 h, and good at 500 and 250 h: 1 failure in 400 + 500 + 250 = 1,150 h. G-2: one
    // life, good at 600 h. One of G-2 has an unknown age and tells nothing; of one the number is not on record.
    [Fact]
    public void Lives_are_counted_by_part_number()
    {
        var trend = Assert.Single(Find([
            new FleetBuilder("ZZ-A01").Life("exhaust/cyl-1/gasket", "gasket", 300, 400, partNumber: "G-1").Life("exhaust/cyl-2/gasket", "gasket", 500, partNumber: "G-1")
                .Life("exhaust/cyl-3/gasket", "gasket", 600, partNumber: "G-2").Build(),
            new FleetBuilder("ZZ-A02").Life("exhaust/cyl-1/gasket", "gasket", 250, partNumber: "G-1")
                .Life("exhaust/cyl-2/gasket", "gasket", 0, exclusion: LifeExclusion.AgeUnknown, partNumber: "G-2").Life("exhaust/cyl-3/gasket", "gasket", 100).Build()]));
        Assert.Equal(("four", "gasket", 1), (trend.TypeGroup, trend.Kind, trend.NotTold));
        Assert.Equal(
            [("G-1", 3, 1, 2, 0), ("G-2", 1, 0, 1, 1)],
            trend.Numbers.Select(n => (n.PartNumber, n.Lives, n.Failures, n.Aircraft, n.NotCounted)));
        Assert.Equal(1 / 1.15, trend.Numbers[0].FailureRate.Value!.Value, 9);
        Assert.Equal(1150, trend.Numbers[0].FailureRate.ExposureHours);
        Assert.All(trend.Comparisons, c => Assert.Equal(PartNumberFinding.NotCompared, c.Finding));
        Assert.Equal(
            "Of 3 exhaust gaskets with part number G-1 1 failed; of 1 with G-2 none failed. Too few have failed to compare them. "
            + "Of 1 more the records do not tell the part number.",
            PartNumberWords.Verdict(trend));
    }

    // Twelve aircraft with three parts of either number. Those of G-1 fail at 300 to 500 h, those of G-2 three times as late, in the same order on every
    // aircraft: every life of the one is three times one of the other, so that the ratio is three, whatever the law's shape.
    [Fact]
    public void A_number_that_lasts_three_times_as_long_is_called()
    {
        var trend = Assert.Single(Find(Fleet(12, 3)));
        var life = Assert.Single(trend.Comparisons, c => c.Measure == PartNumberMeasure.Life);
        Assert.Equal(("G-2", "G-1", PartNumberFinding.Better, 0), (life.Better, life.Worse, life.Finding, life.Hours));
        Assert.Equal(3, life.Times.Value!.Value, 2);
        Assert.True(life.AdjustedPValue < 0.001);
        Assert.Equal(
            "Of 36 exhaust gaskets with part number G-1 all failed; of 36 with G-2 all failed. G-2 lasts about 3.0 times as long as G-1. If they lasted alike, a "
            + "difference this large would come up less than once in 1,000, all comparisons allowed for.",
            PartNumberWords.Verdict(trend));
    }

    [Fact] // The same lives under both numbers: the ratio is one, and nothing is called.
    public void Numbers_that_last_alike_are_not_called()
    {
        var trend = Assert.Single(Find(Fleet(12, 1)));
        var life = Assert.Single(trend.Comparisons, c => c.Measure == PartNumberMeasure.Life);
        Assert.Equal(1, life.Times.Value!.Value, 6);
        Assert.Equal(PartNumberFinding.NoneShown, life.Finding);
        Assert.Contains("No difference between them is shown; there may still be one.", PartNumberWords.Verdict(trend), StringComparison.Ordinal);
    }

    // Ten of 40 parts of G-1 fail within 50 h of going in, none of 40 of G-2 within 100 h; the others of both are good at 900 h. Early hazard: all ten on one
    // side.
    [Fact]
    public void Early_failures_are_told_apart_from_lives()
    {
        List<AircraftObservations> fleet = [];
        for (var i = 0; i < 20; i++)
        {
            var builder = new FleetBuilder($"ZZ-A{i + 1:00}");
            foreach (var place in (int[])[1, 2])
            {
                if (place == 1 && i < 10)
                    builder.Life($"exhaust/cyl-{place}/gasket", "gasket", 0, 50, partNumber: "G-1");
                else
                    builder.Life($"exhaust/cyl-{place}/gasket", "gasket", 900, partNumber: "G-1");
                builder.Life($"exhaust/cyl-{place + 2}/gasket", "gasket", 900, partNumber: "G-2");
            }

            fleet.Add(builder.Build());
        }

        var trend = Assert.Single(Find(fleet));
        var early = Assert.Single(trend.Comparisons, c => c.Measure == PartNumberMeasure.EarlyFailures);
        Assert.Equal(("G-2", "G-1", PartNumberFinding.Better, 100), (early.Better, early.Worse, early.Finding, early.Hours));
        Assert.Null(early.Times.Value); // no finite ratio to none
        Assert.Contains("G-1 fails within 100 h of going in, and no G-2 has.", PartNumberWords.Verdict(trend), StringComparison.Ordinal);
        Assert.Equal("G-1 fails early more often", PartNumberWords.Found(early));
    }

    [Fact]
    public void One_number_alone_is_said_to_be_so()
    {
        var trend = Assert.Single(Find([new FleetBuilder("ZZ-A01").Life("exhaust/cyl-1/gasket", "gasket", 300, 400, partNumber: "G-1").Build()]));
        Assert.Empty(trend.Comparisons);
        Assert.Equal(
            "All exhaust gaskets whose part number is on record have one number, G-1: there is nothing to compare.", PartNumberWords.Verdict(trend));
    }

    [Fact]
    public void Without_a_part_number_there_is_nothing_to_tell() =>
        Assert.Empty(Find([new FleetBuilder("ZZ-A01").Life("exhaust/cyl-1/gasket", "gasket", 300, 400).Build()]));

    [Fact] // All failures on one aircraft: what that aircraft does to its parts cannot be told from the number.
    public void All_in_one_tail_is_not_called()
    {
        var tail = new FleetBuilder("ZZ-A01");
        for (var i = 1; i <= 4; i++)
            tail.Life($"exhaust/cyl-{i}/gasket", "gasket", 300 + i, 400 + i, partNumber: "G-1").Life($"exhaust/cyl-{i}/flange-gasket", "gasket", 900, partNumber: "G-2");
        var trend = Assert.Single(Find([
            tail.Build(), new FleetBuilder("ZZ-A02").Life("exhaust/cyl-1/gasket", "gasket", 900, partNumber: "G-2").Life("exhaust/cyl-2/gasket", "gasket", 900, partNumber: "G-1").Build()]));
        Assert.DoesNotContain(trend.Comparisons, c => c.Finding == PartNumberFinding.Better);
    }

    private static List<AircraftObservations> Fleet(int aircraft, double times)
    {
        List<AircraftObservations> fleet = [];
        for (var i = 0; i < aircraft; i++)
        {
            var builder = new FleetBuilder($"ZZ-A{i + 1:00}");
            for (var place = 1; place <= 3; place++)
            {
                var age = 300 + (((7 * i) + (5 * place)) % 20 * 10);
                builder.Life($"exhaust/cyl-{place}/gasket", "gasket", age - 20, age, partNumber: "G-1");
                builder.Life($"exhaust/cyl-{place}/flange-gasket", "gasket", times * (age - 20), times * age, partNumber: "G-2");
            }

            fleet.Add(builder.Build());
        }

        return fleet;
    }

    private static IReadOnlyList<PartNumberTrend> Find(IReadOnlyList<AircraftObservations> aircraft) =>
        FleetBuilder.Settle(Analyses.PartNumbers, new TypeGroupInputs("four", aircraft, FleetBuilder.AsOf, new TrendParameters()));
}

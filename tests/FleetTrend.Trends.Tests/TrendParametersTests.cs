using System.Reflection;
using System.Text.Json;
using FleetTrend.Observations;

namespace FleetTrend.Trends.Tests;

public sealed class TrendParametersTests
{
    // All but the number of the change, which says which they are and chooses nothing.
    public static TheoryData<string> Names =>
        [.. typeof(TrendParameters).GetProperties().Where(p => p.CanWrite && p.Name != nameof(TrendParameters.Revision)).Select(p => p.Name)];

    [Theory] // By definition: a choice that changes nothing was not made, and says something untrue where it is published.
    [MemberData(nameof(Names))]
    public void Another_value_of_a_published_parameter_gives_other_trends(string name)
    {
        var property = typeof(TrendParameters).GetProperty(name, BindingFlags.Public | BindingFlags.Instance)!;
        object[] others = property.GetValue(new TrendParameters()) switch
        {
            int count => [count + 1000],
            double share and < 1 => [share / 1000, 0.999],
            double hours => [hours / 1000],
            IReadOnlyList<LookInterval> => [new[] { new LookInterval(null, "gasket", 0.1) }],
            IReadOnlyList<MakerLimit> => [new[] { new MakerLimit(null, "gasket", 0.1, 0.1) }],
            var value => throw new NotSupportedException($"{name} is {value}: say here what another value of it is."),
        };
        // Of plain trouble, and of trouble that a level decides about.
        var fleets = new[] { 30, 4 }.Select(factor => new SimulatedFleet { Seed = 3, TroubleFactor = factor, SouthLifeFactor = 0.5, Jitter = 15 }.Build());
        Assert.Contains(fleets, fleet => others.Any(other =>
        {
            var changed = new TrendParameters();
            property.SetValue(changed, other);
            return Trends(fleet, new TrendParameters()) != Trends(fleet, changed);
        }));
    }

    [Theory] // By definition: that of both, else of the kind, else of the type group, else the general one.
    [InlineData("four", "gasket", 25)]
    [InlineData("six", "gasket", 50)]
    [InlineData("four", "clamp", 75)]
    [InlineData("six", "clamp", 100)]
    public void The_look_interval_that_says_most_holds(string typeGroup, string kind, double hours)
    {
        LookInterval[] intervals = [new("four", null, 75), new(null, "gasket", 50), new("four", "gasket", 25), new("six", "muffler", 10)];
        Assert.All([intervals, [.. intervals.Reverse()]], some =>
        {
            var parameters = new TrendParameters { LookIntervals = some };
            Assert.Equal(hours, parameters.LookIntervalHoursOf(typeGroup, kind));
            Assert.Equal(hours, parameters.For(typeGroup, kind).LookIntervalHoursOf("any", "other"));
        });
    }

    [Theory] // By definition: that of both, else of the kind, else of the type group; each of the two numbers for itself; none where none is told.
    [InlineData("four", "gasket", 900.0, 50.0)]
    [InlineData("six", "gasket", 1200.0, 50.0)]
    [InlineData("four", "clamp", 2000.0, 100.0)]
    [InlineData("six", "clamp", null, null)]
    public void The_makers_limit_that_says_most_holds(string typeGroup, string kind, double? renewal, double? look)
    {
        MakerLimit[] limits = [new("four", null, 2000, 100), new(null, "gasket", 1200, 50), new("four", "gasket", 900, null), new("six", "muffler", 10, 10)];
        Assert.All([limits, [.. limits.Reverse()]], some =>
        {
            var parameters = new TrendParameters { MakerLimits = some };
            Assert.Equal((renewal, look), (parameters.GreatestRenewalHoursOf(typeGroup, kind), parameters.GreatestLookHoursOf(typeGroup, kind)));
        });
    }

    // By construction gaskets at north live by a Weibull law of shape 2 and scale 700 h: 2 % fail within 100 h, 28 % within 400 h.
    [Fact]
    public void A_look_interval_of_a_kind_is_the_age_at_which_its_parts_fail_early()
    {
        var fleet = new SimulatedFleet { Seed = 3, SouthLifeFactor = 0.5, Jitter = 15 }.Build();
        PartLives.PartLifeTrend Whole(TrendParameters parameters) =>
            FleetBuilder.Compute(fleet, parameters, FleetBuilder.AsOf, "test").PartLives.First(t => t is { Kind: "gasket", Base: not null });
        var general = Whole(new TrendParameters());
        var own = Whole(new TrendParameters { LookIntervals = [new(null, "gasket", 400)] });
        var others = Whole(new TrendParameters { LookIntervals = [new(null, "clamp", 400), new("no such group", "gasket", 400)] });
        Assert.True(own.EarlyFailures!.Value > general.EarlyFailures!.Value, $"{own.EarlyFailures.Value} after {general.EarlyFailures.Value}");
        Assert.True(own.Shown!.FailureWithinLookAhead.Value > general.Shown!.FailureWithinLookAhead.Value);
        Assert.Equal(own.Shown.Median, general.Shown.Median); // nothing else moves
        Assert.Equal(general.EarlyFailures, others.EarlyFailures);
        Assert.Equal(400, own.Contrast!.EarlyHours);
    }

    [Fact]
    public void Parameters_are_stored_and_read_back_and_what_a_later_version_adds_takes_its_default()
    {
        var set = new TrendParameters
        {
            Revision = 7,
            Confidence = 0.9,
            WatchesPer50AircraftYears = 4,
            LookIntervals = [new("four", null, 50.5)],
            MakerLimits = [new(null, "gasket", 900, null)],
        };
        var json = set.ToJson();
        Assert.Equal(
            """{"confidence":0.9,"falseDiscoveryRate":0.05,"flagsPer50AircraftYears":1,"watchesPer50AircraftYears":4,"minimumFailuresForFit":3,"look"""
                + """IntervalHours":100,"lookIntervals":[{"typeGroup":"four","hours":50.5}],"spareServiceLevel":0.95,"spare"""
                + """FirstHorizonDays":30,"spareSecondHorizonDays":90,"spareThirdHorizonDays":180,"failureCostRatio":5,"undetected"""
                + """FailureChance":0.05,"makerLimits":[{"kind":"gasket","renewalHours":900}]}""",
            json);
        var read = TrendParameters.Read(json, 7);
        Assert.Equal((7, json), (read.Revision, read.ToJson()));
        Assert.Equal(set.LookIntervals, read.LookIntervals);
        Assert.Equal(set.MakerLimits, read.MakerLimits);
        Assert.Equal((0.99, 3), (TrendParameters.Read("""{"confidence":0.99}""", 1).Confidence, TrendParameters.Read("""{"confidence":0.99}""", 1).MinimumFailuresForFit));
        Assert.Equal(new TrendParameters().ToJson(), TrendParameters.Read(null, 0).ToJson());
    }

    private static string Trends(IReadOnlyList<AircraftObservations> fleet, TrendParameters parameters) => JsonSerializer.Serialize(
        FleetBuilder.Compute(fleet, parameters, FleetBuilder.AsOf, "test") with { Parameters = new TrendParameters() }, TrendJson.Options);
}

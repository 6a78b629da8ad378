using FleetTrend.Observations;
using FleetTrend.Records;
using FleetTrend.Records.Findings;
using FleetTrend.Trends.Quiet;

namespace FleetTrend.Trends.Tests;

/// <summary>What is too quiet is asked about, and the rest is not. Aircraft fly an hour a day; the as-of day is hour 731.</summary>
public sealed class QuietTests
{
    private const string Weld = "exhaust/cyl-1/flange-weld";
    private const string Clamp = "exhaust/cyl-1/clamp-bolt";
    private const string Baffle = "exhaust/muffler/baffle";
    private static readonly HoursOnDate Newest = new(FleetBuilder.Start.AddDays(720), Hours.From(720));

    // Eleven others with nine findings each: nine cracks and loose bolts are expected of the twelfth, which has none.
    [Fact]
    public void An_aircraft_with_no_finding_where_the_others_have_nine_is_asked_about()
    {
        var quiet = OfAircraft(Fleet([]), "ZZ-A00");
        Assert.Equal((QuietVerdict.Asked, 0), (quiet.Verdict, quiet.Found));
        Assert.InRange(quiet.Expected, 7, 9.5);
        Assert.Equal([(Condition.Crack, 0), (Condition.Looseness, 0)], quiet.Classes.Select(c => (c.Condition!.Value, c.Found)));
        Assert.Equal(0, quiet.Ratio.Value);
        Assert.True(quiet.Ratio.Upper < 1);
        var question = Assert.Single(quiet.Questions);
        Assert.StartsWith("ZZ-A00: no finding in ", question, StringComparison.Ordinal);
        Assert.Contains("; the others would have had ", question, StringComparison.Ordinal);
        Assert.EndsWith("Is it in good order, is it looked at less closely, or are findings not written down?", question, StringComparison.Ordinal);
        Assert.Contains(quiet.Evidence, k => k.SourceRecordId.StartsWith("ZZ-A00-", StringComparison.Ordinal));
    }

    // Nine findings until hour 330 as the others have, and none since: the question is about the time since.
    [Fact]
    public void One_that_fell_silent_is_asked_about_since_then()
    {
        var fleet = Fleet([], others: 30, perAircraft: 18);
        var fell = new FleetBuilder("ZZ-A00").Watched(Weld, "flange-weld", 0, 720, looks: 25).Watched(Clamp, "clamp-bolt", 0, 720, looks: 25);
        for (var i = 0; i < 9; i++)
            fell.Found(i % 2 == 0 ? Weld : Clamp, i % 2 == 0 ? "flange-weld" : "clamp-bolt", 20 + 35 * i, i % 2 == 0 ? Condition.Crack : Condition.Looseness);
        var quiet = OfAircraft([fell, .. fleet.Skip(1)], "ZZ-A00");
        Assert.Equal((QuietVerdict.Asked, 0), (quiet.Verdict, quiet.Found));
        Assert.InRange(quiet.SinceDate!.Value, FleetBuilder.Start.AddDays(270), FleetBuilder.Start.AddDays(360));
    }

    [Fact]
    public void An_ordinary_aircraft_is_not_asked_about()
    {
        var found = Find(Fleet([60, 110, 180, 300, 420, 500, 640]));
        Assert.All(found.Where(q => q.Registration is not null), q => Assert.Equal(QuietVerdict.Ordinary, q.Verdict));
        Assert.All(found, q => Assert.Empty(q.Questions));
        Assert.All(found, q => Assert.Empty(q.Evidence));
    }

    [Fact]
    public void Of_too_few_hours_nothing_is_said()
    {
        var young = new FleetBuilder("ZZ-A00").Watched(Weld, "flange-weld", 600, 720, looks: 2).Watched(Clamp, "clamp-bolt", 600, 720, looks: 2);
        var quiet = OfAircraft([young, .. Fleet([]).Skip(1)], "ZZ-A00");
        Assert.Equal((QuietVerdict.TooEarly, 0), (quiet.Verdict, quiet.Found));
        Assert.InRange(quiet.Expected, 0.5, 2);
        Assert.Empty(quiet.Questions);
    }

    [Fact]
    public void An_aircraft_on_which_nothing_was_looked_at_has_no_figure()
    {
        var quiet = OfAircraft([new FleetBuilder("ZZ-A00"), .. Fleet([]).Skip(1)], "ZZ-A00");
        Assert.Equal((QuietVerdict.TooEarly, null, null), (quiet.Verdict, quiet.LogOdds, quiet.Ratio.Value));
        Assert.StartsWith("not enough data", quiet.Ratio.NotEnoughData, StringComparison.Ordinal);
    }

    // South writes down nothing, at north and west each of the other twenty has nine. A base is asked as a whole, beside its aircraft.
    [Fact]
    public void A_base_where_nothing_is_found_is_asked_about_as_a_whole()
    {
        List<FleetBuilder> fleet =
        [
            .. Enumerable.Range(0, 10).Select(i => Tail($"ZZ-S{i:00}", "south", [])),
            .. Enumerable.Range(0, 20).Select(i => Tail($"ZZ-N{i:00}", i < 10 ? "north" : "west", Times(i, 9))),
        ];
        var atBase = Assert.Single(Find(fleet), q => q.Registration is null && q.Verdict == QuietVerdict.Asked);
        Assert.Equal(("south", 0), (atBase.Base, atBase.Found));
        Assert.StartsWith("four at south: no finding since ", Assert.Single(atBase.Questions), StringComparison.Ordinal);
    }

    // Seven inspections, 100 h apart: the first at 100 h, the newest at 700 h.
    [Fact]
    public void A_location_that_nobody_examines_is_asked_about()
    {
        var found = Find(Looked(null, others: 700));
        var place = Assert.Single(Assert.Single(found, q => q.Unexamined.Count > 0).Unexamined);
        Assert.Equal(
            (Baffle, null, 600.0, 7, 5, 5),
            (place.Location, place.LastLookDate, place.Hours, place.InspectionCount, place.OthersExamined, place.OthersCount));
        Assert.Equal(7, place.Evidence.Count);
        Assert.Equal(
            "ZZ-A00: never examined: muffler baffle, in 600 h and 7 inspections. 5 of 5 others are examined there. "
                + "Can it not be reached, or is it looked at and not written down?",
            Assert.Single(OfAircraft(Looked(null, others: 700), "ZZ-A00").Questions));
    }

    // By hand: look interval 100 h, so that 300 h without a look ask, and three inspections.
    [Theory]
    [InlineData(400.0, true)]
    [InlineData(500.0, false)]
    public void A_location_is_asked_about_from_three_look_intervals_on(double last, bool isAsked)
    {
        var quiet = OfAircraft(Looked(last, others: 700), "ZZ-A00");
        Assert.Equal(isAsked ? ["ZZ-A00: not examined since 4 Feb 2025: muffler baffle, in 300 h and 3 inspections. 5 of 5 others are examined there. "
            + "Can it not be reached, or is it looked at and not written down?"] : Array.Empty<string>(), quiet.Questions);
    }

    [Fact] // Long hours, and two inspections in them.
    public void Long_hours_with_few_inspections_say_nothing() => Assert.Empty(OfAircraft(
        [new FleetBuilder("ZZ-A00").Visited(100, 700).LookedAt(Weld, "flange-weld", 700).LookedAt(Baffle, "muffler-baffle", null), .. Looked(null, others: 700).Skip(1)],
        "ZZ-A00").Unexamined);

    [Fact]
    public void A_location_that_hardly_anybody_examines_is_no_question() => Assert.All(Find(Looked(null, others: null)), q => Assert.Empty(q.Questions));

    [Fact]
    public void A_location_that_a_whole_base_does_not_examine_is_one_question()
    {
        List<FleetBuilder> fleet =
        [
            .. Enumerable.Range(0, 3).Select(i => Looking($"ZZ-S{i:00}", "south", null)),
            .. Enumerable.Range(0, 4).Select(i => Looking($"ZZ-N{i:00}", "north", 700)),
        ];
        var asked = Assert.Single(Find(fleet), q => q.Questions.Count > 0);
        Assert.Equal((null, "south"), (asked.Registration, asked.Base));
        Assert.Equal(
            "four at south: never examined: muffler baffle, in 1,800 h and 21 inspections. 4 of 4 aircraft elsewhere are examined there. "
                + "Can it not be reached, or is it looked at and not written down?",
            Assert.Single(asked.Questions));
    }

    [Fact]
    public void A_retired_aircraft_is_not_asked_about()
    {
        var fleet = Looked(null, others: 700).Select((b, i) => b.Build(retired: i == 0 ? FleetBuilder.Start.AddDays(720) : null)).ToList();
        Assert.DoesNotContain(FleetBuilder.Find(Analyses.Quiet, fleet), q => q.Registration == "ZZ-A00" || q.Questions.Count > 0);
    }

    [Fact]
    public void What_is_asked_stands_first()
    {
        var ordered = Analyses.Quiet.Order(Find(Fleet([]))).ToList();
        Assert.Equal("ZZ-A00", ordered[0].Registration);
        Assert.Equal(ordered, Analyses.Quiet.Order(ordered.AsEnumerable().Reverse()));
    }

    private static Quietness OfAircraft(List<FleetBuilder> fleet, string registration) => Find(fleet).Single(q => q.Registration == registration);

    private static IReadOnlyList<Quietness> Find(List<FleetBuilder> fleet) =>
        FleetBuilder.Find(Analyses.Quiet, [.. fleet.Select(b => b.Build(inspection: Newest))]);

    private static List<FleetBuilder> Fleet(int[] found, int others = 11, int perAircraft = 9) =>
        [Tail("ZZ-A00", "north", found), .. Enumerable.Range(1, others).Select(i => Tail($"ZZ-A{i:00}", "north", Times(i, perAircraft)))];

    private static int[] Times(int aircraft, int count) => [.. Enumerable.Range(0, count).Select(n => 15 + aircraft % 20 + n * 680 / count)];

    private static FleetBuilder Tail(string registration, string atBase, int[] found)
    {
        var tail = new FleetBuilder(registration, atBase).Watched(Weld, "flange-weld", 0, 720, looks: 25).Watched(Clamp, "clamp-bolt", 0, 720, looks: 25);
        foreach (var (n, hours) in found.Index())
            tail.Found(n % 2 == 0 ? Weld : Clamp, n % 2 == 0 ? "flange-weld" : "clamp-bolt", hours, n % 2 == 0 ? Condition.Crack : Condition.Looseness);
        return tail;
    }

    private static List<FleetBuilder> Looked(double? first, double? others) =>
        [Looking("ZZ-A00", "north", first), .. Enumerable.Range(1, 5).Select(i => Looking($"ZZ-A{i:00}", "north", i < 3 ? 700 : others))];

    private static FleetBuilder Looking(string registration, string atBase, double? baffle) => new FleetBuilder(registration, atBase)
        .Visited(100, 200, 300, 400, 500, 600, 700).LookedAt(Weld, "flange-weld", 700).LookedAt(Baffle, "muffler-baffle", baffle);
}

using FleetTrend.Observations;
using FleetTrend.Records;
using FleetTrend.Records.Findings;
using FleetTrend.Statistics.Recurrences;
using FleetTrend.Trends.Groups;
using FleetTrend.Trends.Growth;

namespace FleetTrend.Trends.Tests;

/// <summary>Which way a kind of place goes: what is counted, verdicts and words. An hour is a day here.</summary>
public sealed class GrowthTests
{
    private const string Weld = "exhaust/left/y-weld";
    private const double LastHours = 731; // the as-of day

    // By hand. Watched from 0 to 700 h, one crack at 350 h last good at 300 h: 300 h without, 50 h with it, 350 h without. By the calendar the crack
    // came between
    // the days 300 and 350 of 731 before the as-of day, and the 650 h without it lie in periods of 28 days: none has more than 28 h.
    [Fact]
    public void Watched_hours_are_cut_where_a_finding_came_between_two_looks()
    {
        var spans = Spans(new FleetBuilder("ZZ-A01", hoursAtStart: 0).Watched(Weld, "y-weld", 0, 700).Found(Weld, "y-weld", 350, lastGood: 300));
        Assert.Equal([new GrowthSpan(0, 300, 300, 0), new(300, 350, 50, 1), new(350, 700, 350, 0)], Assert.Single(spans.ByHours(Condition.Crack)).Spans);
        var calendar = Assert.Single(spans.ByCalendar(Condition.Crack)).Spans;
        var crack = Assert.Single(calendar, s => s.Events > 0);
        Assert.Equal(new GrowthSpan(Math.Round((300 - 731) / 365.25, 4), Math.Round((350 - 731) / 365.25, 4), 50, 1), crack);
        Assert.Equal(650, calendar.Where(s => s.Events == 0).Sum(s => s.Exposure), 6);
        Assert.All(calendar.Where(s => s.Events == 0), s => Assert.InRange(s.Exposure, 1, 28));
        Assert.Equal([new GrowthSpan(0, 700, 700, 0)], Assert.Single(spans.ByHours(Condition.LeakTrace)).Spans);
    }

    // By hand: two locations of the kind add their hours in one line where they were watched alike; two cracks of one look come in one span; what was
    // present at
    // entry or came in no watched hours is none; what came before the three years counts by hours alone.
    [Fact]
    public void Locations_of_a_kind_add_up_and_only_what_counts_in_a_rate_counts()
    {
        var aircraft = new FleetBuilder("ZZ-A01").Watched(Weld, "y-weld", 0, 700).Watched("exhaust/right/y-weld", "y-weld", 0, 700)
            .Found(Weld, "y-weld", 350, lastGood: 300).Found(Weld, "y-weld", 350, ordinal: 2, lastGood: 300).Found(Weld, "y-weld", 0.1, atEntry: true).Found(Weld, "y-weld", 720);
        Assert.Equal([new GrowthSpan(0, 300, 300, 0), new(0, 700, 700, 0), new(300, 350, 50, 2), new(350, 700, 350, 0)],
            Assert.Single(Spans(aircraft).ByHours(Condition.Crack)).Spans);
        var late = new DateOnly(2028, 6, 1); // day 1,613: the three years begin at day 521
        var calendar = Assert.Single(Spans(aircraft, late).ByCalendar(Condition.Crack)).Spans;
        Assert.Equal((0, 2 * (700 - 521)), (calendar.Sum(s => s.Events), calendar.Sum(s => s.Exposure)));
    }

    // Twelve aircraft with looks every 50 h over 700 h: by hand 12 cracks in the first half, 36 in the second; twelve times as many kinds that do not
    // change would
    // still leave it called. The value is that of GrowthFit, which R has checked, for the spans above.
    [Fact]
    public void What_gets_worse_is_said_with_how_many_times_as_often()
    {
        var fleet = Fleet(12, (1, 3));
        var trend = Assert.Single(Find(fleet));
        Assert.Equal((48, 12, 48, 12), (trend.Calendar.Events, trend.Calendar.Aircraft, trend.Hours!.Events, trend.Hours.Aircraft));
        var fit = GrowthFit.Estimate([.. Spans(fleet).ByCalendar(Condition.Crack).Select(a => a.Spans)], GrowthLaw.LogLinear, GrowthLevels.Own).Value;
        Assert.Equal(Math.Exp(2 * fit.Growth.Value), trend.Calendar.Growth.Value!.Value, 9);
        Assert.Equal((GrowthFinding.Worse, GrowthFinding.Worse), (trend.Calendar.Finding, trend.Hours.Finding));
        Assert.Equal(2 * Math.Min(trend.Calendar.PValue!.Value, trend.Hours.PValue!.Value),
            Math.Min(trend.Calendar.AdjustedPValue!.Value, trend.Hours.AdjustedPValue!.Value), 12);
        var words = GrowthWords.Statement(trend);
        Assert.StartsWith("Welds of a Y joint, four, cracks: getting worse; ", words, StringComparison.Ordinal);
        Assert.Contains(" times as often now as two years ago (", words, StringComparison.Ordinal);
        Assert.Contains(", by 48 cracks on 12 aircraft in three years. Over flight hours: the more hours an aircraft has, the more often (growth exponent ", words, StringComparison.Ordinal);
        Assert.Contains("If nothing had changed, a trend this strong would come up ", words, StringComparison.Ordinal);
        var better = Assert.Single(Find(Fleet(12, (3, 1))));
        Assert.Equal((GrowthFinding.Better, GrowthFinding.Better), (better.Calendar.Finding, better.Hours!.Finding));
        Assert.Contains("cracks: getting better; 0.", GrowthWords.Statement(better), StringComparison.Ordinal);
    }

    [Fact] // As many in the second half as in the first.
    public void Where_nothing_changes_no_trend_is_shown()
    {
        var trend = Assert.Single(Find(Fleet(12, (2, 2))));
        Assert.Equal((GrowthFinding.NoneShown, GrowthFinding.NoneShown), (trend.Calendar.Finding, trend.Hours!.Finding));
        var words = GrowthWords.Statement(trend);
        Assert.Contains("no trend is shown by 48 cracks on 12 aircraft in three years; ", words, StringComparison.Ordinal);
        Assert.Contains("Over flight hours no trend is shown (growth exponent ", words, StringComparison.Ordinal);
        Assert.DoesNotContain("would come up", words, StringComparison.Ordinal);
    }

    [Theory] // Fleets of one, two and five aircraft, one finding, and all of them in one tail: nothing is told of a trend.
    [InlineData(1, 1, 0)]
    [InlineData(1, 4, 12)]
    [InlineData(2, 3, 9)]
    [InlineData(5, 0, 1)]
    [InlineData(5, 1, 0)]
    public void With_few_findings_or_few_aircraft_no_trend_is_told(int aircraft, int early, int late)
    {
        var fleet = Fleet(1, (early, late)).Concat(Fleet(aircraft, (0, 0)).Skip(1)).ToList();
        var trend = Assert.Single(Find(fleet));
        Assert.Equal((GrowthFinding.NotTold, null, null), (trend.Calendar.Finding, trend.Calendar.PValue, trend.Calendar.Growth.Value));
        Assert.Contains("too few to tell a trend: ", GrowthWords.Statement(trend), StringComparison.Ordinal);
        Assert.EndsWith("One is told from 5 on at least 4 aircraft on.", GrowthWords.Statement(trend), StringComparison.Ordinal);
    }

    [Fact]
    public void A_fleet_without_findings_has_nothing_to_tell() => Assert.Empty(Find(Fleet(5, (0, 0))));

    [Fact] // A part with a life is renewed: the hours of its aircraft are not its age.
    public void Parts_that_are_renewed_have_no_trend_by_aircraft_hours()
    {
        var trend = Assert.Single(Find(Fleet(6, (1, 3), "exhaust/cyl-1/gasket", "gasket", Condition.LeakTrace)));
        Assert.Null(trend.Hours);
        Assert.DoesNotContain("flight hours", GrowthWords.Statement(trend), StringComparison.Ordinal);
    }

    private static IReadOnlyList<GrowthTrend> Find(IReadOnlyList<AircraftObservations> fleet) =>
        FleetBuilder.Settle(Analyses.Growth, new TypeGroupInputs("four", fleet, FleetBuilder.AsOf, new TrendParameters()));

    // So many cracks in the first 350 h of each aircraft, and in the rest, each between looks 50 h apart; aircraft start in turn so that not all come at once.
    private static List<AircraftObservations> Fleet(
        int aircraft, (int Early, int Late) cracks, string location = Weld, string kind = "y-weld", Condition condition = Condition.Crack)
    {
        List<AircraftObservations> fleet = [];
        for (var i = 0; i < aircraft; i++)
        {
            var one = new FleetBuilder($"ZZ-A{i:00}").Watched(location, kind, 0, 700, looks: 15);
            for (var c = 0; c < cracks.Early + cracks.Late; c++)
            {
                var look = c < cracks.Early ? 50 + (50 * ((i + (3 * c)) % 7)) : 400 + (50 * ((i + (2 * c)) % 7));
                one.Found(location, kind, look, condition, ordinal: c + 1, lastGood: look - 50);
            }

            fleet.Add(one.Build(latest: new HoursOnDate(FleetBuilder.Start.AddDays((int)LastHours), Hours.From(LastHours))));
        }

        return fleet;
    }

    private static GrowthSpans Spans(FleetBuilder aircraft, DateOnly? asOf = null) => Spans([aircraft.Build()], asOf);

    private static GrowthSpans Spans(IReadOnlyList<AircraftObservations> fleet, DateOnly? asOf = null) => new(
        TypeGroupObservations.Sort("four", fleet).Locations, fleet.ToDictionary(a => a.Registration, a => a.Hours, StringComparer.Ordinal),
        asOf ?? DateOnly.FromDateTime(FleetBuilder.AsOf.UtcDateTime));
}

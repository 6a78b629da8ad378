using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Reports.Weekly;
using FleetTrend.Reports.Words;
using FleetTrend.Trends;
using FleetTrend.Trends.Repeats;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>What a report says of places where a condition came back. Expected words are derived by hand from the invented fleet.</summary>
public sealed class RepeatSectionTests
{
    private static IDocument Report(TrendSnapshot now, TrendSnapshot? before, ReportInputs inputs) =>
        new HtmlParser().ParseDocument(WeeklyReport.Compose(now, before, inputs).RenderWhole().Html);

    private static string Section(IDocument document, string name) =>
        document.QuerySelector($"section[aria-labelledby=ft-{name}]")?.TextContent ?? "";

    [Fact] // A fact and no judgement: the counts stand beside each other, and no chance is told.
    public void A_return_is_listed_beside_the_same_location_on_the_others()
    {
        var section = Section(Report(Snapshot() with { Flags = [] }, null, Inputs(ReportScope.WholeFleet)), "repeats");
        Assert.Contains("4 in 12,190 h on 11 aircraft", section);
        Assert.Contains("A repeat alone doesn't raise a flag", section);
        Assert.DoesNotMatch(@"\b[pq] (=|below)", section);
        Assert.Contains("none in 900 h on 1 aircraft", Repeats(new RepeatOthers(1, 0, 900)));
        Assert.Contains("no other aircraft was watched there", Repeats(null));

        static string Repeats(RepeatOthers? others) =>
            Section(Report(Snapshot() with { Repeats = [Repeat() with { Others = others }] }, null, Inputs(ReportScope.WholeFleet)), "repeats");
    }

    [Fact] // Found 20 Jan and monitored, welded on 3 Mar; the crack after that is open.
    public void Each_event_of_a_history_has_its_own_date_and_each_action_too()
    {
        var repeats = Section(Report(Snapshot(), null, Inputs(ReportScope.WholeFleet)), "repeats");
        Assert.Contains(
            "found 3 Sep 2025 at 1,512 h, stop-drilled the same day; "
            + "found 20 Jan 2026 at 1,634 h, 122 h after the stop drilling, monitored the same day, welded 3 Mar 2026 at 1,870 h; "
            + "found 19 Nov 2026 at 1,958 h, 88.3 h after the weld repair, still open",
            repeats);
    }

    [Fact]
    public void What_a_good_look_closed_is_neither_open_nor_repaired()
    {
        var e = Repeat().Events[^1] with { ClosedDate = new DateOnly(2026, 11, 21) };
        Assert.EndsWith("seen good 21 Nov 2026 with no action recorded", HistoryWords.Tell(e));
    }

    [Fact] // Trends of an earlier version know what closed an event and not when.
    public void A_history_of_an_earlier_version_says_what_it_knows()
    {
        Assert.Equal(
            "found 3 Sep 2025 at 1,512 h, later stop-drilled",
            HistoryWords.Tell(new(new DateOnly(2025, 9, 3), 1512.4, null, Records.Actions.ActionKind.StopDrilled)));
        Assert.Equal(
            "found 3 Sep 2025 at 1,512 h, 121 h after the action before it, no action recorded that closed it",
            HistoryWords.Tell(new(new DateOnly(2025, 9, 3), 1512.4, 121, null)));
    }

    [Fact] // Eight since the renewal, one of them there at the first look, so seven counted.
    public void A_count_says_what_of_it_is_counted_and_why_the_rest_is_not()
    {
        var entry = Repeat().Events[0] with { Counting = EventCounting.PresentAtEntry };
        var run = Repeat() with { RenewedHours = 640, Events = [entry, .. Enumerable.Repeat(Repeat().Events[1], 7)] };
        Assert.Equal(
            "8 cracks since the renewal at 640 h: 7 counted, 1 already there at the first look", HistoryWords.Counts(run));
        Assert.Equal("3 cracks", HistoryWords.Counts(Repeat()));
        Assert.StartsWith("already there at the first look, 3 Sep 2025 at 1,512 h", HistoryWords.Tell(entry));
    }

    [Fact] // The count is that of the rate; the plot and the table say the same one and name the rest.
    public void Table_and_plot_say_one_count_and_what_is_not_counted()
    {
        var entry = Repeat().Events[0] with { FoundHours = 1400, Counting = EventCounting.PresentAtEntry };
        var now = Snapshot() with
        {
            RecurrenceContrasts = [Contrast() with { PresentAtEntryCount = 1 }],
            Repeats = [Repeat() with { Events = [entry, .. Repeat().Events] }],
        };
        var document = Report(now, null, Inputs(ReportScope.WholeFleet, Raised(RepeatFlag())));
        var repeats = Section(document, "repeats");
        Assert.Contains("4 cracks: 3 counted, 1 already there at the first look", repeats);
        Assert.Contains("ZZ-A07 alone had 3 by its last look at 2,040 h. Not counted: 1 more was already there at the first look.", repeats);
        Assert.Contains("the mean of the other 11 aircraft of trainer-4, without ZZ-A07", repeats);
    }
}

using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.PartLives;
using FleetTrend.Trends.Words;
using static FleetTrend.Reports.Tests.InventedFigures;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>What the sections say. Expected words are derived by hand from the invented fleet.</summary>
public sealed class SectionTests
{
    private static IDocument Report(TrendSnapshot now, TrendSnapshot? before, ReportInputs inputs) =>
        new HtmlParser().ParseDocument(WeeklyReport.Compose(now, before, inputs).RenderWhole().Html);

    private static string Section(IDocument document, string name) =>
        document.QuerySelector($"section[aria-labelledby=ft-{name}]")?.TextContent ?? "";

    [Fact]
    public void Most_pressing_stands_first_and_cautions_last()
    {
        var order = Report(Snapshot(), WeekBefore(), AllFlags(ReportScope.WholeFleet))
            .QuerySelectorAll("section").Select(s => s.GetAttribute("aria-labelledby")!).ToList();
        Assert.Equal(
            ["ft-news", "ft-tails", "ft-repeats", "ft-levels", "ft-part-lives", "ft-rates", "ft-fleet", "ft-data-problems", "ft-too-little", "ft-reading", "ft-cautions"],
            order);
    }

    [Fact]
    public void New_events_are_those_that_the_week_before_did_not_have()
    {
        var news = Section(Report(Snapshot(), WeekBefore(), AllFlags(ReportScope.WholeFleet)), "news");
        Assert.Contains("2 cracks, on ZZ-A07 (2)", news); // nine now, seven a week ago
        Assert.Contains("1 new data problem", news);
        Assert.Contains("1 of 12 aircraft had an inspection in these days", news); // only tail 1: 18 Nov; tail 2 on 15 Nov
    }

    // A hundred aircraft more, of which the last has open findings: it is listed, and so is the flagged one.
    [Fact]
    public void Of_a_large_fleet_the_table_lists_those_that_ask_for_something_and_says_so()
    {
        var now = Snapshot();
        var calm = now.Fleet[0] with { OpenEvents = 0, RecentEvents = 0 };
        now = now with
        {
            Fleet = [.. now.Fleet, .. Enumerable.Range(1, 100).Select(n => calm with { Registration = $"ZZ-B{n:000}", OpenEvents = n == 100 ? 9 : 0 })],
        };
        var document = Report(now, null, AllFlags(ReportScope.WholeFleet));
        var tails = document.QuerySelectorAll("section[aria-labelledby=ft-fleet] tbody th").Select(h => h.TextContent).ToList();
        Assert.Equal(50, tails.Count);
        Assert.Contains("ZZ-B100", tails);
        Assert.Contains("ZZ-A07", tails);
        Assert.Contains("These 50 of 112 aircraft have a flag, or the most open or recent findings.", Section(document, "fleet"));
    }

    [Fact]
    public void A_first_report_says_that_there_is_nothing_to_compare_with() =>
        Assert.Contains("no earlier one to compare with", Section(Report(Snapshot(), null, Inputs(ReportScope.WholeFleet)), "news"));

    [Fact]
    public void One_tail_is_one_card_with_all_its_reasons_and_each_check_once()
    {
        var cards = Report(Snapshot(), null, AllFlags(ReportScope.WholeFleet)).QuerySelectorAll(".ft-card");
        Assert.Equal(2, cards.Length);
        Assert.Contains("1. ZZ-A07, Quillmoor", cards[0].TextContent);
        Assert.Contains("9 cracks; similar aircraft would give 1.9 (", cards[0].TextContent);
        Assert.Contains("3 cracks; the same spot on the others would give 0.21 (", cards[0].TextContent);
        Assert.Single(cards[0].QuerySelectorAll("li"), l => l.TextContent.StartsWith("Cyl 3 flange weld:", StringComparison.Ordinal));
        // q = 0.0031 is 1 in 323, said as 1 in 320.
        Assert.Contains(
            "About 1 in 320 calls this strong or stronger is a false alarm, if like aircraft have one rate and findings come singly (q = 0.0031).", cards[0].TextContent);
        // p = 0.00021 is 1 in 4,762; the test of a count is exact, so that it is told.
        Assert.Contains("If it were like the rest, a count this high would come up about once in 4,800 (p = 0.00021).", cards[0].TextContent);
        Assert.Contains("Sandvale", cards[1].TextContent);
    }

    [Fact] // Everything that a judgement needs: hours, expected with its interval and the others' counts, ratio, p, q, the test and its family.
    public void A_flagged_place_tells_its_test_in_full_in_every_form()
    {
        var inputs = Inputs(ReportScope.WholeFleet, Raised(RepeatFlag()));
        var rendered = WeeklyReport.Compose(Snapshot(), null, inputs).RenderWhole();
        foreach (var text in new[] { rendered.Text, Report(Snapshot(), null, inputs).Body!.TextContent }
            .Select(t => string.Join(' ', t.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))))
        {
            Assert.All(
                [
                    "would give 0.21 (95 % interval 0.060 to 0.54", "4 events in 12,190 h", "14 times", "95 % interval 2.9 to 42", "3 events in 640 h",
                    "a count this high would come up less than once in 10,000 (p below 0.0001)", "About 1 in 81 calls this strong or stronger is a false alarm", "as of 22 Nov 2026 05:30 UTC",
                    "Tested: events at this place against the same place on the other 11 aircraft of trainer-4. The q-value allows for all 612 tests of an aircraft, a place and a condition.",
                ],
                words => Assert.Contains(words, text));
        }
    }

    [Fact] // Trends stored before events were counted have nothing to compare with, and nothing is said of new ones.
    public void Without_counts_of_the_week_before_nothing_is_called_new()
    {
        var before = WeekBefore();
        before = before with { Fleet = [.. before.Fleet.Select(l => l with { Events = null })] };
        Assert.DoesNotContain("in the records since", Section(Report(Snapshot(), before, AllFlags(ReportScope.WholeFleet)), "news"));
    }

    [Fact]
    public void Two_reasons_for_no_rate_are_two_counts()
    {
        var now = Snapshot();
        now = now with { Rates = [now.Rates[0] with { NotWatchedCount = 3 }] };
        var rates = Section(Report(now, null, Inputs(ReportScope.WholeFleet)), "rates");
        Assert.Contains("2 cracks were already there at the first look: listed, and in no rate.", rates);
        Assert.Contains("3 cracks were found in no watched hours", rates);
    }

    [Fact] // The contrast of bases is approximate: nothing beyond 1 in 1,000 is told of it, and what it assumes is.
    public void A_flagged_base_tells_its_chance_no_further_than_it_holds()
    {
        var flag = BaseFlag() with { PValue = PValue.Approximate(1e-7), QValue = 1e-6 };
        var tails = Section(Report(Snapshot() with { Flags = [] }, null, Inputs(ReportScope.WholeFleet, Raised(flag))), "tails");
        Assert.Contains("Fewer than 1 in 1,000 calls this strong or stronger are false alarms, if like parts last alike at all bases (q below 0.001).", tails);
        Assert.DoesNotContain("10,000", tails);
    }

    [Fact]
    public void A_flag_after_a_closing_says_from_when_on_it_counts()
    {
        var flag = DriftFlag() with { CountedAfterDate = new DateOnly(2025, 6, 1) };
        var tails = Section(Report(Snapshot() with { Flags = [] }, null, Inputs(ReportScope.WholeFleet, Raised(flag))), "tails");
        Assert.Contains("Only what came after 1 Jun 2025 counts, when this was last dealt with.", tails);
    }

    [Fact] // Such flags stay in the database until somebody closes them.
    public void A_flag_raised_by_count_in_an_earlier_version_says_so()
    {
        var old = RepeatFlag() with { Expectation = null, PValue = null, QValue = null, Test = null, Family = null };
        var tails = Section(Report(Snapshot() with { Flags = [] }, null, Inputs(ReportScope.WholeFleet, Raised(old))), "tails");
        Assert.Contains("3 cracks; the same spot on the others would give 0.21 in those hours", tails);
        Assert.Contains("not by a test", tails);
    }

    [Fact]
    public void New_flags_stand_before_open_ones_and_open_ones_before_acknowledged()
    {
        var inputs = Inputs(
            ReportScope.WholeFleet,
            Raised(DriftFlag() with { Registration = Tail(1), Subject = "a" }, FlagLineState.Acknowledged),
            Raised(DriftFlag() with { Registration = Tail(2), Subject = "b" }, FlagLineState.Open),
            Raised(RepeatFlag() with { Registration = Tail(3), Subject = "c" }));
        var heads = Report(Snapshot(), null, inputs).QuerySelectorAll(".ft-card h3").Select(h => h.TextContent).ToList();
        Assert.Collection(
            heads,
            h => Assert.Matches(@"1\. ZZ-A03.*NEW", h),
            h => Assert.Matches(@"2\. ZZ-A02.*OPEN", h),
            h => Assert.Matches(@"3\. ZZ-A01.*ACKNOWLEDGED", h));
    }

    [Fact]
    public void A_flag_that_this_weeks_numbers_would_not_raise_says_so()
    {
        var now = Snapshot() with { Flags = [] };
        var tails = Section(Report(now, null, Inputs(ReportScope.WholeFleet, Raised(DriftFlag(), FlagLineState.Open))), "tails");
        Assert.Contains("This week's numbers alone would not raise it", tails);
    }

    [Fact]
    public void A_report_of_one_base_has_its_own_tails_alone()
    {
        var document = Report(Snapshot(), null, AllFlags(new ReportScope(Away)));
        var tails = document.QuerySelectorAll("section[aria-labelledby=ft-fleet] tbody th").Select(h => h.TextContent).ToList();
        Assert.Equal(["ZZ-A02", "ZZ-A04", "ZZ-A06", "ZZ-A08", "ZZ-A10", "ZZ-A12"], tails);
        Assert.DoesNotContain("ZZ-A07", Section(document, "tails"));
        Assert.Contains("Sandvale", Section(document, "tails"));
    }

    [Fact]
    public void Part_lives_start_with_this_base_and_compare_with_the_others()
    {
        var document = Report(Snapshot(), null, AllFlags(new ReportScope(Away)));
        var rows = document.QuerySelectorAll("section[aria-labelledby=ft-part-lives] tbody tr th").Select(h => h.TextContent).ToList();
        Assert.Equal(["Sandvale", "Quillmoor"], rows); // the bases are called different: no line for all
        var lives = Section(document, "part-lives");
        Assert.Contains("Exhaust gaskets fail sooner at Sandvale: half by 395 h, against 742 h elsewhere.", lives);
        Assert.Contains("The bases differ, so there is no line for all of them together.", lives);
        Assert.Contains("by the Weibull law, which fits better (AIC)", lives);
        // 14 in all: 3 and 11.
        Assert.Contains(
            "5 left out because their age is not known, 3 because they had failed before records began, 11 because they were never examined.", lives);
    }

    [Fact] // 9 of 101 against none: by hand from the invented comparison.
    public void Early_failures_have_their_own_words_in_every_form()
    {
        var early = AwayContrast() with
        {
            MedianTest = new ContrastTest(0.6, 0.7, ContrastFinding.NoneShown),
            EarlyTest = new ContrastTest(0.0004, 0.001, ContrastFinding.Worse),
            EarlyHere = OfLives(0.089, 0.04, 0.16, "", 21, 60),
            EarlyElsewhere = OfLives(0, 0, 0.061, "", 14, 60) with { Value = null, Lower = null, NotEnoughData = "none of 60 has failed before 210 h" },
            MedianFromHours = 100,
        };
        var now = Snapshot();
        now = now with { PartLives = [.. now.PartLives.Select(t => t.Base == Away ? t with { Contrast = early } : t)] };
        var flag = BaseFlag() with { Contrast = early, Ratio = early.EarlyRatio! };
        var rendered = WeeklyReport.Compose(now with { Flags = [flag] }, null, Inputs(new ReportScope(Away), Raised(flag))).RenderWhole();
        foreach (var text in new[] { rendered.Text, new HtmlParser().ParseDocument(rendered.Html).Body!.TextContent }
            .Select(t => string.Join(' ', t.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))))
        {
            Assert.Contains("Exhaust gaskets fail early more often at Sandvale: 8.9 % within 100 h, against none elsewhere", text);
            Assert.Contains("fail early more often than at the other bases: 8.9 % within 100 h, against none elsewhere", text);
            Assert.Contains("New ones that fail within 100 h: here 8.9 %", text);
            Assert.Contains("elsewhere none of 60 has failed before 210 h", text);
            Assert.Contains("at most 6.1 %", text);
            Assert.Contains("Early failures left out, median here over median elsewhere: 0.53 times", text);
            Assert.DoesNotContain("0.00 %", text);
            Assert.DoesNotContain("fail sooner", text);
        }
    }

    [Fact]
    public void No_difference_shown_is_said_so_beside_the_numbers()
    {
        var none = AwayContrast() with
        {
            MedianRatio = OfLives(0.88, 0.76, 1.019, "", 21, 60),
            MedianTest = new ContrastTest(0.08, 0.08, ContrastFinding.NoneShown),
        };
        var now = Snapshot();
        now = now with { PartLives = [.. now.PartLives.Select(t => t.Base == Away ? t with { Contrast = none } : t)] };
        var lives = Section(Report(now, null, Inputs(new ReportScope(Away))), "part-lives");
        Assert.Contains("No difference shown between exhaust gaskets at Sandvale and at the other bases.", lives);
        Assert.Contains("(q = 0.080)", lives); // nothing is called, so nothing is said of calls
        Assert.Contains("0.76 to 1.02", lives); // 1.019 lies above 1, and reads so
    }

    [Fact] // How much aircraft differ stands beside the interval that allows for it, and what it means is told once.
    public void A_rate_over_several_aircraft_tells_their_dispersion()
    {
        var now = Snapshot();
        now = now with { Rates = [now.Rates[0] with { Rate = now.Rates[0].Rate with { Dispersion = 1.314 } }] };
        var document = Report(now, null, Inputs(ReportScope.WholeFleet));
        Assert.Contains("14 events in 48,210 h, dispersion 1.3", Section(document, "rates"));
        Assert.Contains("Dispersion of a rate: variance over mean of the aircraft's counts.", Section(document, "reading"));
        Assert.Equal("14 events in 48,210 h", FigureWords.Format(Rate(14, 48210, 0.29, 0.2, 0.5), FigureStyle.AsIs).Counts);
    }

    [Fact] // Data from 380 h, the first failure, to 812 h, the oldest age: what a law says outside them is no finding.
    public void Limits_outside_the_data_are_said_to_be_outside()
    {
        var median = OfLives(620, 3e-6, 329788, "h", 5, 40) with { DataFrom = 380, DataTo = 812 };
        Assert.Equal("95 % interval below 380 to beyond 812", FigureWords.Format(median, FigureStyle.Hours).Interval);
        Assert.Equal("95 % interval 500 to beyond 812", FigureWords.Format(median with { Lower = 500, Upper = null }, FigureStyle.Hours).Interval);
    }

    [Fact]
    public void Too_little_data_says_how_many_events_and_what_can_still_be_said()
    {
        var text = Section(Report(Snapshot(), null, Inputs(ReportScope.WholeFleet)), "too-little");
        Assert.Contains("not enough data: 1 failure", text);
        Assert.Contains("none seen, which is no proof that there are none", text);
        Assert.Contains("at most 0.31", text);
    }

    [Fact]
    public void Problems_are_counted_by_kind_with_their_records()
    {
        var text = Section(Report(Snapshot(), WeekBefore(), Inputs(ReportScope.WholeFleet)), "data-problems");
        Assert.Contains("Hours go backwards without a meter change", text);
        Assert.Contains("shop-cards r-881", text);
        Assert.DoesNotContain("held", text);
    }

    [Fact] // Two problems, one closed: one open of which one is new, and the closed one is counted and not listed.
    public void A_problem_that_somebody_closed_is_counted_apart_and_no_news()
    {
        var problems = Snapshot().DataProblems;
        var inputs = Inputs(ReportScope.WholeFleet) with
        {
            DataProblems =
            [
                new DataProblemLine { Identity = problems[0].Identity, SinceDate = new DateOnly(2026, 11, 19) },
                new DataProblemLine { Identity = problems[1].Identity, SinceDate = new DateOnly(2026, 10, 3), ClosedBy = "lead mechanic" },
            ],
        };
        var report = Report(Snapshot(), WeekBefore(), inputs);
        var text = Section(report, "data-problems");
        Assert.Contains("Known since 19 Nov 2026", text);
        Assert.DoesNotContain("f-120", text);
        var rows = report.QuerySelectorAll("section[aria-labelledby=ft-data-problems] tbody tr").Select(r => string.Join('|', r.QuerySelectorAll("td").Take(3).Select(c => c.TextContent)));
        Assert.Equal(["1|1|0", "0|0|1"], rows);

        var allClosed = inputs with
        {
            DataProblems = [.. problems.Select(
            p => new DataProblemLine { Identity = p.Identity, SinceDate = new DateOnly(2026, 11, 1), ClosedBy = "lead" })]
        };
        Assert.DoesNotContain("new data problem", Section(Report(Snapshot(), WeekBefore(), allClosed), "news"));
    }

    [Fact] // 12 + 2 records of two marks; ZZ-A01 is at the home base, ZZ-Q99 is not registered anywhere.
    public void Held_records_are_counted_for_the_fleet_and_for_the_base_that_has_the_aircraft()
    {
        var held = new HeldLine { ByRegistration = new Dictionary<string, int> { ["ZZ-Q99"] = 12, ["ZZ-A01"] = 2 }, UnmappedCodes = 3 };
        var fleet = Section(Report(Snapshot() with { DataProblems = [] }, null, Inputs(ReportScope.WholeFleet) with { Held = held }), "data-problems");
        Assert.Contains("14 records are held, about 2 registration marks, as of 22 Nov 2026 05:30 UTC", fleet);
        Assert.Contains("3 codes of sources have no meaning yet", fleet);
        Assert.Contains("2 records are held, about 1 registration mark", Section(Report(Snapshot(), null, Inputs(new ReportScope(Home)) with { Held = held }), "data-problems"));
        Assert.DoesNotContain("held", Section(Report(Snapshot(), null, Inputs(new ReportScope(Away)) with { Held = held }), "data-problems"));
    }

    [Fact]
    public void An_empty_fleet_gives_a_report_that_says_so()
    {
        var empty = Snapshot() with { Fleet = [], DataProblems = [], Levels = [], Repeats = [], PartLives = [], Rates = [], Recurrences = [], Flags = [] };
        var document = Report(empty, null, Inputs(ReportScope.WholeFleet));
        Assert.Contains("No aircraft on record here.", Section(document, "fleet"));
        Assert.Contains("That is no sign that all is well", Section(document, "tails"));
        Assert.Empty(document.QuerySelectorAll("img"));
    }
}

using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends.FailureChances;
using FleetTrend.Trends.Scores;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>How right forecasts were: what is off in mail and report, every quarter on a page.</summary>
public sealed class ScoresSectionTests
{
    private const string Off = "In the last two quarters (1 Apr to 30 Sep 2026) 31 were found failed where 18 were expected (10 to 27 would fit): these chances are off.";

    private const string Spare = "of 8 forecasts of spares for 90 days since 4 Jul 2026 5 held; 71 parts were needed where 42 were expected (30 to 57 would fit): these forecasts are off.";

    private static readonly Quarter Summer = new(new DateOnly(2026, 7, 1));

    [Fact]
    public void The_page_answers_first_and_shows_every_quarter()
    {
        var page = Page(
            [Score(Summer.Next, isOver: false, null), Score(Summer, isOver: true, isOff: true), Score(Summer.Previous, isOver: true, isOff: false)]);
        Assert.Equal($"Off in the last two quarters: chances before the next look ({Trainer}).", page.QuerySelectorAll("p")[0].TextContent);
        Assert.Equal($"{Trainer}: {char.ToLowerInvariant(Off[0])}{Off[1..]}", page.QuerySelector("li")!.TextContent);
        var tables = page.QuerySelectorAll("table");
        Assert.Equal(["Oct to Dec 2026, so far", Trainer, "100", "9.0", "4 to 15", "12", "yes", "not over"], Cells(tables[0], 0));
        Assert.Equal(["Jul to Sep 2026", Trainer, "100", "9.0", "4 to 15", "12", "yes", "off"], Cells(tables[0], 1));
        Assert.Equal("within", Cells(tables[0], 2).Last());
        Assert.Equal(["1.0 % to 12 %", "100", "6.0", "2 to 11", "5", "yes"], Cells(tables[1], 0));
        Assert.Equal(["12 % to 40 %", "100", "12", "6 to 20", "26", "more"], Cells(tables[1], 1));
    }

    [Fact]
    public void The_page_has_spares_days_calls_and_what_lasted()
    {
        var score = Score(Summer, isOver: true, isOff: false) with
        {
            Spares = Spares(null),
            SparesOfTwo = Spares(true),
            DueLooks = new DueScore { Named = 28, Met = 20, Late = 5, Open = 3, Flown = 26, WithinWeek = 19, MedianDaysLate = 2.5 },
            Calls = new CallScore { Flags = 4, Watches = 7, ActedOn = 3, Helped = 1, NoBetter = 1, ClosedAsNothing = 2, Open = 5, ExpectedFalse = 0.75 },
            Effects = new EffectScore(3, 1),
        };
        var page = Page([score]);
        Assert.Equal(
            $"Off in the last two quarters: spares ({Trainer}). Right within the stated error: chances before the next look ({Trainer}).", First(page));
        Assert.Contains($"{Trainer}: {Spare}", page.TextContent, StringComparison.Ordinal);
        var tables = page.QuerySelectorAll("table");
        Assert.Equal(["Jul to Sep 2026", Trainer, "30", "8 (1 more said \"at least\")", "8", "6.0", "1 to 14", "7", ""], Cells(tables[2], 0));
        Assert.Equal(["Jul to Sep 2026", Trainer, "90", "8", "5", "42", "30 to 57", "71", "off"], Cells(tables[2], 1));
        Assert.Equal(["Jul to Sep 2026", Trainer, "28", "20", "5", "3", "19 of 26", "2.5"], Cells(tables[3], 0));
        Assert.Equal(["Jul to Sep 2026", Trainer, "4", "7", "3", "1", "1", "2", "5", "0.75"], Cells(tables[4], 0));
        Assert.Equal(["Jul to Sep 2026", Trainer, "3", "2", "1"], Cells(tables[5], 0));
        Assert.Equal([$"Spares: {Spare}"], ScoreWords.Statements(score).Where(s => s.StartsWith("Spares", StringComparison.Ordinal)));
    }

    [Fact] // Who has just imported his history sees the year before, and that nobody foresaw it then.
    public void Until_there_is_a_verdict_the_year_before_is_worked_out_again()
    {
        var page = Parsed(ReportHtml.Render(ScoresSection.Compose(Snapshot() with { ChanceCalibrations = [FailureChancesSectionTests.Calibration()] })));
        Assert.Contains("Chances of the year before, worked out again", page.TextContent, StringComparison.Ordinal);
        Assert.Contains("No forecast was kept then.", page.TextContent, StringComparison.Ordinal);
        Assert.Equal(["1.0 % to 12 %", "100", "6.0", "2 to 11", "5", "within"], Cells(page.QuerySelector("table")!, 0));
        var judged = Snapshot() with { ChanceCalibrations = [FailureChancesSectionTests.Calibration()], Scores = [Score(Summer, isOver: true, isOff: false)] };
        Assert.DoesNotContain("worked out again", Parsed(ReportHtml.Render(ScoresSection.Compose(judged))).TextContent, StringComparison.Ordinal);
    }

    // While the 90 days of the newest quarter are not over, the verdict of the one before stands; and it is said beside the spares.
    [Fact]
    public void Spares_that_were_off_say_so_beside_their_figures()
    {
        Score[] scores =
        [
            Score(Summer, isOver: true, isOff: false) with { SparesOfTwo = Spares(null) },
            Score(Summer.Previous, isOver: true, isOff: false) with { SparesOfTwo = Spares(true) },
        ];
        Assert.Equal([$"{Trainer}: {Spare}"], ScoreWords.SparesOff(scores));
        Assert.Empty(ScoreWords.SparesOff([scores[0], scores[1] with { SparesOfTwo = Spares(false) }]));
        var section = SparesSection.Compose(Snapshot() with { Spares = [SparesSectionTests.Need("G-1", onHand: 50)], Scores = scores });
        Assert.Contains(Spare, Parsed(ReportHtml.Render(section)).QuerySelector("p strong")!.TextContent, StringComparison.Ordinal);
        Assert.Contains(Spare, Whole(scores, ReportScope.WholeFleet), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_known_yet_is_said_in_a_line()
    {
        Assert.StartsWith("Nothing is scored yet: no forecast was kept before today.", First(Page([])), StringComparison.Ordinal);
        Assert.StartsWith(
            "Nothing is judged yet: forecasts are kept since 31 Mar 2026, and the first quarter ends on 31 Dec 2026.",
            First(Page([Score(Summer.Next, isOver: false, null)])), StringComparison.Ordinal);
        Assert.StartsWith(
            "Too little has happened in the last two quarters to judge any forecast.", First(Page([Score(Summer, isOver: true, isOff: null)])), StringComparison.Ordinal);
        Assert.StartsWith(
            $"Right within the stated error in the last two quarters: chances before the next look ({Trainer}).", First(Page([Score(Summer, isOver: true, isOff: false)])),
            StringComparison.Ordinal);
    }

    [Fact] // The newest verdict counts: what was off a year ago and is right since is not said beside the figures.
    public void Only_the_newest_verdict_is_said_beside_the_chances()
    {
        Score[] was = [Score(Summer, isOver: true, isOff: false), Score(Summer.Previous, isOver: true, isOff: true)];
        Assert.Empty(ScoreWords.ChancesOff(was));
        Assert.DoesNotContain("are off", Whole(was, ReportScope.WholeFleet), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_off_stands_in_the_mail_the_report_and_beside_the_chances()
    {
        Score[] off = [Score(Summer, isOver: true, isOff: true)];
        var report = WeeklyReport.Compose(Snapshot() with { Scores = off }, WeekBefore(), Inputs(ReportScope.WholeFleet));
        var brief = Assert.Single(report.Document.Brief, s => s.Name == "brief-scores");
        var mail = new HtmlParser().ParseDocument(ReportHtml.Render(brief)).Body!;
        Assert.Equal($"{Trainer}: {char.ToLowerInvariant(Off[0])}{Off[1..]}", mail.QuerySelector("p")!.TextContent, ignoreCase: true);
        Assert.Equal("http://fleet.example:8080/score", mail.QuerySelector("a")!.GetAttribute("href"));
        Assert.InRange(report.Document.Brief.Sum(s => Words(Parsed(ReportHtml.Render(s)).TextContent)), 40, 350);
        Assert.Contains(Off[1..], Whole(off, ReportScope.WholeFleet), StringComparison.Ordinal);
        var chances = Parsed(ReportHtml.Render(FailureChancesSection.Compose(Snapshot() with { FailureChances = [Chance()], Scores = off })));
        Assert.Contains(Off[1..], chances.QuerySelector("p strong")!.TextContent, StringComparison.Ordinal);
        Assert.Contains(Off[1..], Parsed(ReportHtml.Render(FailureChancesSection.Compose(Chance(), AsOf, off))).TextContent, StringComparison.Ordinal);
        var other = Parsed(ReportHtml.Render(FailureChancesSection.Compose(Chance() with { TypeGroup = "other" }, AsOf, off)));
        Assert.DoesNotContain(Off[1..], other.TextContent, StringComparison.Ordinal);
    }

    [Fact] // A report of a base speaks of the type groups that fly there.
    public void A_base_without_the_type_group_is_not_told() =>
        Assert.DoesNotContain("are off", Whole([Score(Summer, isOver: true, isOff: true) with { TypeGroup = "elsewhere" }], ReportScope.WholeFleet), StringComparison.Ordinal);

    [Theory]
    [InlineData(true, 20, "1 Apr to 30 Sep 2026) 20 were found failed where 18 were expected (10 to 27 would fit), but too many or too few of the likely or the unlikely: these chances are off.")]
    [InlineData(false, 20, "would fit): these chances are within their stated error.")]
    [InlineData(null, 20, "would fit): too few looks to judge.")]
    [InlineData(false, 1, "1 was found failed where 18 were expected")]
    public void A_verdict_reads(bool? isOff, int found, string part)
    {
        var score = Chances(isOff) with { FromDate = Summer.Previous.StartDate, Expected = 18, Found = found, Lower = 10, Upper = 27 };
        Assert.Contains(part, ScoreWords.Chance(Summer, score), StringComparison.Ordinal);
    }

    private static Score Score(Quarter quarter, bool isOver, bool? isOff) => new()
    {
        TypeGroup = Trainer,
        Quarter = quarter,
        IsOver = isOver,
        Chances = Chances(null) with { FromDate = Summer.Previous.StartDate },
        ChancesOfTwo = isOver
            ? Chances(isOff) with { FromDate = quarter.Previous.StartDate, Looks = 200, Expected = 18.2, Found = 31, Lower = 10, Upper = 27 }
            : null,
    };

    private static ChanceScore Chances(bool? isOff) => new()
    {
        FromDate = Summer.StartDate,
        Looks = 100,
        Expected = 9,
        Found = 12,
        Lower = 4,
        Upper = 15,
        Groups = [new ChanceGroup(0.01, 0.12, 100, 6, 5, 2, 11), new ChanceGroup(0.12, 0.4, 100, 12, 26, 6, 20)],
        IsOff = isOff,
    };

    private static SpareScore Spares(bool? isOff) => new()
    {
        KeptDate = new DateOnly(2026, 7, 4),
        JudgedDays = 90,
        IsOff = isOff,
        Horizons =
        [
            new SpareHorizonScore { Days = 30, Forecasts = 8, Held = 8, AtLeast = 1, Expected = 6, Needed = 7, Lower = 1, Upper = 14 },
            new SpareHorizonScore { Days = 90, Forecasts = 8, Held = 5, AtLeast = 0, Expected = 42, Needed = 71, Lower = 30, Upper = 57 },
        ],
    };

    private static FailureChance Chance() => new()
    {
        Registration = Tail(1),
        Base = Home,
        TypeGroup = Trainer,
        Parts =
        [
            new PartChance { Location = "exhaust/cyl-2/gasket", Kind = "gasket", GoodHours = 400, AgeHours = 430, NextLookHours = 500, Chance = 0.8, Lower = 0.7, Upper = 0.9 },
        ],
        Expected = 0.8,
        Lower = 0.7,
        Upper = 0.9,
        AnyChance = 0.8,
        Confidence = 0.95,
        AgeUnknown = 0,
        TooFewFailures = 0,
        Evidence = [],
    };

    private static string Whole(IReadOnlyList<Score> scores, ReportScope scope) =>
        Parsed(WeeklyReport.Compose(Snapshot() with { Scores = scores }, WeekBefore(), Inputs(scope)).RenderWhole().Html).TextContent;

    private static IElement Page(IReadOnlyList<Score> scores) => Parsed(ReportHtml.Render(ScoresSection.Compose(Snapshot() with { Scores = scores })));

    private static int Words(string text) => text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Length;

    private static string First(IElement page) => page.QuerySelector("p")!.TextContent;

    private static IEnumerable<string> Cells(IElement table, int row) => table.QuerySelectorAll("tbody tr")[row].Children.Select(c => c.TextContent);

    private static IElement Parsed(string html) => new HtmlParser().ParseDocument(html).Body!;
}

using FleetTrend.Records.Flags;
using FleetTrend.Reports.Weekly;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>The subject says the news. Expected strings are written by hand from the invented fleet.</summary>
public sealed class SubjectTests
{
    private static string Subject(ReportInputs inputs, bool withProblems = true)
    {
        var now = Snapshot();
        if (!withProblems) now = now with { DataProblems = [] };
        return WeeklyReport.Compose(now, WeekBefore(), inputs).Subject;
    }

    [Fact]
    public void A_quiet_week_says_so() =>
        Assert.Equal("Quiet week at Quillmoor: no new flags", Subject(Inputs(new ReportScope(Home)), withProblems: false));

    [Fact]
    public void A_quiet_week_counts_what_is_still_open() =>
        Assert.Equal(
            "Quiet week, whole fleet: no new flags, 2 flags still open",
            Subject(Inputs(ReportScope.WholeFleet, Raised(RepeatFlag(), FlagLineState.Open), Raised(BaseFlag(), FlagLineState.Acknowledged)),
                withProblems: false));

    [Fact]
    public void One_flag_is_told_in_full() =>
        Assert.Equal(
            "1 new flag at Quillmoor: ZZ-A07 cracks again at cyl 3 flange weld",
            Subject(Inputs(new ReportScope(Home), Raised(RepeatFlag()))));

    [Fact]
    public void A_flag_of_another_base_is_no_news_here() =>
        Assert.Equal("Quiet week at Quillmoor: no new flags", Subject(Inputs(new ReportScope(Home), Raised(BaseFlag())), withProblems: false));

    [Fact]
    public void Problems_alone_are_the_news() =>
        Assert.Equal(
            "No new flags, whole fleet; 1 data problem to sort out",
            Subject(Inputs(ReportScope.WholeFleet)));

    [Fact] // A watch is less than a flag: it is told below, and makes no headline.
    public void A_watch_is_no_news_of_the_subject_and_is_listed_as_less_sure()
    {
        var watch = DriftFlag() with { Tier = FlagTier.Watch };
        Assert.Equal("Quiet week, whole fleet: no new flags", Subject(Inputs(ReportScope.WholeFleet, Raised(watch)), withProblems: false));
        var text = WeeklyReport.Compose(Snapshot(), null, Inputs(ReportScope.WholeFleet, Raised(watch))).RenderWhole().Text;
        Assert.Contains("1 new watch: less sure than a flag, below.", text, StringComparison.Ordinal);
        Assert.Contains("WATCHED: LESS SURE", text, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("No new flags.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Many_flags_are_counted_and_the_strongest_named()
    {
        var many = Enumerable.Range(1, 9).Select(i => Raised(DriftFlag() with
        {
            Registration = Tail(i),
            Subject = $"airframe-drift/{Tail(i)}/Crack",
            QValue = 0.001 * i,
        })).ToArray();
        var subject = Subject(Inputs(ReportScope.WholeFleet, many));
        Assert.StartsWith("9 new flags, whole fleet: ZZ-A01 has 4.7 times the cracks of similar aircraft", subject);
        Assert.EndsWith(" more", subject);
        Assert.InRange(subject.Length, 1, 160);
    }

    [Fact]
    public void No_aircraft_is_no_quiet_week()
    {
        var empty = Snapshot() with { Fleet = [], DataProblems = [], Levels = [], Repeats = [], PartLives = [], Rates = [], Recurrences = [], Flags = [] };
        Assert.Equal("No aircraft on record, whole fleet", WeeklyReport.Compose(empty, null, Inputs(ReportScope.WholeFleet)).Subject);
    }

    [Fact]
    public void A_line_break_in_a_name_starts_no_other_header()
    {
        var flag = RepeatFlag() with { Registration = "ZZ-A07\r\nBcc: all@fleet.example" };
        var subject = Subject(Inputs(new ReportScope(Home), Raised(flag)));
        Assert.DoesNotContain(subject, char.IsControl);
        Assert.Contains("ZZ-A07 Bcc: all@fleet.example", subject);
    }
}

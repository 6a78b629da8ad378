using AngleSharp.Html.Parser;
using FleetTrend.Records.Flags;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Text;
using FleetTrend.Reports.Weekly;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>What the mail says: the news and what to do about it, on one screen.</summary>
public sealed class BriefTests
{
    private const int MostWords = 350;
    private const int MostBytes = 60_000;

    [Theory]
    [InlineData(null)]
    [InlineData(Home)]
    public void The_mail_is_read_in_two_minutes(string? atBase)
    {
        var report = Compose(atBase is null ? ReportScope.WholeFleet : new ReportScope(atBase));
        var said = report.Document.Brief.Sum(s => s.Heading.Split(' ').Length + Words(s));
        Assert.InRange(said, 40, MostWords);
        Assert.InRange(report.Render().Html.Length, 500, MostBytes);
        Assert.All(report.Render().Text.Split('\n'), line => Assert.InRange(line.Length, 0, TextReport.Columns));
    }

    [Fact] // Both parts say the same, and neither has a plot, a figure in brackets or a method.
    public void Text_and_html_say_the_brief_alone_with_the_caution()
    {
        var report = Compose(ReportScope.WholeFleet);
        var mail = report.Render();
        var page = new HtmlParser().ParseDocument(mail.Html);
        Assert.Equal(report.Document.Brief.Select(s => s.Heading), page.QuerySelectorAll("h2").Select(h => h.TextContent));
        Assert.All(report.Document.Brief, s => Assert.Contains(s.Heading.ToUpperInvariant(), mail.Text, StringComparison.Ordinal));
        Assert.Contains(Cautions.Brief, page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains(Cautions.Brief, mail.Text.Replace('\n', ' '), StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll("img, table, .ft-figure"));
        Assert.NotEmpty(mail.Plots); // those of the whole report
        Assert.Equal(report.Document.Preview, page.Body.Children[0].TextContent);
    }

    [Fact]
    public void Each_aircraft_to_pull_in_has_a_sentence_a_few_checks_and_its_look_list()
    {
        var section = Compose(ReportScope.WholeFleet).Document.Brief.Single(s => s.Name == "brief-pull-in");
        var marks = AllFlags(ReportScope.WholeFleet).Flags
            .Where(f => f.Flag.Registration is not null && f.Flag.Tier == FlagTier.Flag && f.State != FlagLineState.Acknowledged)
            .Select(f => f.Flag.Registration!).Distinct(StringComparer.Ordinal).ToList();
        Assert.NotEmpty(marks);
        var lists = section.Blocks.OfType<Block.Bullets>().ToList();
        Assert.Equal(Math.Min(3, marks.Count), lists.Count);
        Assert.All(lists, list => Assert.InRange(list.Items.Count, 2, 4));
        Assert.All(lists, list => Assert.Contains("/aircraft/", list.Items[^1].Runs.OfType<Run.Link>().Single().Target.AbsoluteUri, StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_to_pull_in_is_said()
    {
        var report = WeeklyReport.Compose(Snapshot() with { Flags = [] }, null, Inputs(ReportScope.WholeFleet));
        Assert.StartsWith("Nothing to pull in this week.", Text(report.Document.Brief.Single(s => s.Name == "brief-pull-in")), StringComparison.Ordinal);
        Assert.StartsWith("Nothing to pull in; ", report.Document.Preview, StringComparison.Ordinal);
    }

    [Fact] // News is told once: what the report before said already stands in the whole report only.
    public void What_is_called_since_the_report_before_is_told_once()
    {
        var now = Snapshot() with { Repairs = [RepairsSectionTests.Trend()], PartNumbers = [PartNumbersSectionTests.Trend()] };
        var first = WeeklyReport.Compose(now, WeekBefore(), Inputs(ReportScope.WholeFleet)).Render().Text.ReplaceLineEndings(" ");
        Assert.Contains("Exhaust gasket: G-2 lasts about 1.8 times as long as G-1.", first, StringComparison.Ordinal);
        Assert.Contains("9 cracked again within 200 h", first.Replace("  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        var next = WeeklyReport.Compose(now, now, Inputs(ReportScope.WholeFleet));
        Assert.DoesNotContain("G-2", next.Render().Text, StringComparison.Ordinal);
        Assert.DoesNotContain("cracked again", next.Render().Text, StringComparison.Ordinal);
        Assert.Contains("G-2 lasts about", next.RenderWhole().Text.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact] // Somebody has taken it on: it is no news, and stays in the report.
    public void What_is_acknowledged_is_not_pulled_in_again()
    {
        var flag = AllFlags(ReportScope.WholeFleet).Flags.First(f => f.Flag.Registration is not null && f.Flag.Tier == FlagTier.Flag);
        var taken = flag with { State = FlagLineState.Acknowledged, AcknowledgedBy = "A. Person" };
        var report = WeeklyReport.Compose(Snapshot(), null, Inputs(ReportScope.WholeFleet, taken));
        Assert.StartsWith("Nothing to pull in", Text(report.Document.Brief.Single(s => s.Name == "brief-pull-in")), StringComparison.Ordinal);
        Assert.Contains("acknowledged by", report.RenderWhole().Text, StringComparison.Ordinal);
    }

    [Fact] // A document from before the brief was kept apart.
    public void An_older_report_is_mailed_as_it_was()
    {
        var report = Compose(ReportScope.WholeFleet);
        var older = report.Document with { Brief = [], Preview = "" };
        Assert.Equal(older.Sections.Count, new HtmlParser().ParseDocument(FleetTrend.Reports.Html.MailHtml.Render(older)).QuerySelectorAll("h2").Length);
        Assert.Equal(ReportDocumentJson.Write(report.Document), ReportDocumentJson.Write(ReportDocumentJson.Read(ReportDocumentJson.Write(report.Document))));
    }

    private static WeeklyReport Compose(ReportScope scope) => WeeklyReport.Compose(Snapshot(), WeekBefore(), AllFlags(scope));

    private static string Text(ReportSection section)
    {
        var document = new ReportDocument { Title = "", Caution = "", Origin = [], Sections = [section] };
        return string.Join(' ', TextReport.Render(document).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2)).Trim();
    }

    private static int Words(ReportSection section) => Text(section).Split(' ', StringSplitOptions.RemoveEmptyEntries).Length;
}

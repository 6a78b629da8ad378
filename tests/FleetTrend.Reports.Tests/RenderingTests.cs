using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Text;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>What every rendered report must be, whatever it says.</summary>
public sealed class RenderingTests
{
    private static readonly RenderedReport Fleet = WeeklyReport.Compose(Snapshot(), WeekBefore(), AllFlags(ReportScope.WholeFleet)).RenderWhole();
    private static readonly RenderedReport AtHome = WeeklyReport.Compose(Snapshot(), null, AllFlags(new ReportScope(Home))).RenderWhole();

    private static string Page(RenderedReport report) =>
        ReportHtml.Render(ReportDocumentJson.Read(report.DocumentJson), name => "/reports/7/plots/" + name);

    private static IDocument Parse(string html) => new HtmlParser().ParseDocument(html);

    [Fact]
    public void Every_figure_carries_interval_counts_and_a_method_that_is_listed()
    {
        foreach (var html in new[] { Fleet.Html, Page(Fleet), AtHome.Html })
        {
            var document = Parse(html);
            var figures = document.QuerySelectorAll(".ft-figure");
            Assert.NotEmpty(figures);
            var listed = document.QuerySelectorAll("section[aria-labelledby=ft-reading] li").Select(i => i.TextContent).ToList();
            foreach (var figure in figures)
            {
                Assert.NotEqual("", figure.QuerySelector(".ft-value")!.TextContent);
                Assert.Matches("interval .+ to |at most|at least", figure.QuerySelector(".ft-interval")!.TextContent);
                Assert.Matches(@"\d+ (events?|failures?)", figure.QuerySelector(".ft-counts")!.TextContent);
                var method = figure.QuerySelector(".ft-method")!.TextContent;
                Assert.Contains(listed, l => l.StartsWith(method + " ", StringComparison.Ordinal));
            }
        }
    }

    [Fact]
    public void Making_a_report_prints_nothing()
    {
        var printed = ConsoleOutput.During(() =>
        {
            var report = WeeklyReport.Compose(Snapshot(), WeekBefore(), AllFlags(ReportScope.WholeFleet)).RenderWhole();
            Assert.Equal(report.Plots.Count, Parse(Page(report)).QuerySelectorAll("img").Length);
        });
        Assert.Equal("", printed);
        Assert.NotEmpty(Fleet.Plots);
    }

    [Fact]
    public void Text_says_each_figure_as_the_page_does()
    {
        Assert.Contains("14 times (95 % interval 2.9 to 42; 3 events in 640 h) [2]", Unwrapped(Fleet.Text));
        Assert.Contains("0.53 times (95 % interval 0.34 to 0.79; 21 failures among 60 lives) [3]", Unwrapped(Fleet.Text));
        // No event in 12,050 h: -ln(0.025) / 12.05 = 0.306 per 1,000 h, by hand.
        Assert.Contains("at most 0.31 per 1,000 location-hours, 95 %; 0 events in 12,050 h", Unwrapped(Fleet.Text));
    }

    [Fact]
    public void Cautions_stand_at_the_top_and_in_full_at_the_end()
    {
        var document = Parse(Fleet.Html);
        Assert.Equal(Cautions.Brief, document.QuerySelector("h1 ~ .ft-caution")!.TextContent);
        Assert.Equal(Cautions.Full, document.QuerySelectorAll("section")[^1].QuerySelectorAll("li").Select(i => i.TextContent));
        var text = Unwrapped(Fleet.Text);
        Assert.True(text.IndexOf(Cautions.Brief, StringComparison.Ordinal) < text.IndexOf("NEW THIS WEEK", StringComparison.Ordinal));
        Assert.All(Cautions.Full, c => Assert.Contains(c, text));
    }

    [Fact]
    public void As_of_moment_and_code_version_are_told()
    {
        foreach (var text in new[] { Unwrapped(Fleet.Text), Parse(Fleet.Html).Body!.TextContent })
        {
            Assert.Contains("As of: 22 Nov 2026 05:30 UTC", text);
            Assert.Contains("0.1.0+test", text);
        }

        var captions = Parse(Fleet.Html).QuerySelectorAll("caption, .ft-plot p");
        Assert.All(captions, c => Assert.Contains("as of 22 Nov 2026 05:30 UTC", c.TextContent));
    }

    [Fact]
    public void Plots_have_alternative_text_and_are_all_there()
    {
        var images = Parse(Fleet.Html).QuerySelectorAll("img");
        Assert.Equal(3, images.Length);
        Assert.All(images, i => Assert.True(i.GetAttribute("alt")!.Length > 60));
        Assert.Equal(
            Fleet.Plots.Keys.Select(n => "cid:" + n).Order(StringComparer.Ordinal),
            images.Select(i => i.GetAttribute("src")!).Order(StringComparer.Ordinal));
        Assert.All(Fleet.Plots.Values, png => Assert.Equal<byte>([0x89, 0x50, 0x4E, 0x47], png[..4])); // PNG specification, 5.2
    }

    [Fact]
    public void The_document_can_be_read_without_eyes()
    {
        var document = Parse(Fleet.Html);
        Assert.Equal("en", document.DocumentElement.GetAttribute("lang"));
        Assert.Single(document.QuerySelectorAll("h1"));
        Assert.All(document.QuerySelectorAll("table"), t =>
        {
            Assert.NotNull(t.QuerySelector("caption"));
            Assert.All(t.QuerySelectorAll("thead th"), h => Assert.Equal("col", h.GetAttribute("scope")));
            Assert.All(t.QuerySelectorAll("tbody tr"), r => Assert.Equal("row", r.FirstElementChild!.GetAttribute("scope")));
        });
        // Headings go down one level at a time.
        var levels = document.QuerySelectorAll("h1,h2,h3,h4").Select(h => h.LocalName[1] - '0').ToList();
        Assert.All(levels.Zip(levels.Skip(1)), p => Assert.True(p.Second <= p.First + 1));
    }

    [Fact]
    public void Nothing_in_the_mail_comes_from_elsewhere_or_runs()
    {
        var document = Parse(Fleet.Html);
        Assert.Empty(document.QuerySelectorAll("script, link, iframe, object, form"));
        Assert.All(document.QuerySelectorAll("[src]"), e => Assert.StartsWith("cid:", e.GetAttribute("src")));
        Assert.DoesNotContain("url(", Fleet.Html);
    }

    [Fact]
    public void Hostile_words_stay_words()
    {
        const string Hostile = "<script>alert(1)</script>\"'&<img src=x onerror=y>";
        var now = Snapshot();
        var flag = DriftFlag() with { Registration = Hostile, WhatToCheck = [Hostile], Locations = [Hostile] };
        now = now with
        {
            Fleet = [.. now.Fleet, Line(13) with { Registration = Hostile, Base = Hostile, TypeGroup = Hostile }],
            Levels = [.. now.Levels, Level(13, Records.Findings.Condition.Crack) with { Registration = Hostile, TypeGroup = Hostile }],
            DataProblems = [new DataProblem(DataProblemKind.InTheFuture, Hostile, new DateOnly(2026, 11, 19), Hostile, [new(Hostile, Hostile, 1)])],
            Flags = [flag],
        };
        var line = Raised(flag, FlagLineState.Acknowledged) with { Note = Hostile, AcknowledgedBy = Hostile };
        var inputs = Inputs(ReportScope.WholeFleet, line) with { Notice = Hostile };
        var report = WeeklyReport.Compose(now, null, inputs).RenderWhole();
        foreach (var html in new[] { report.Html, Page(report) })
        {
            var document = Parse(html);
            Assert.Empty(document.QuerySelectorAll("script, [onerror], img[src=x]"));
            Assert.Contains(Hostile, document.Body!.TextContent); // a name, as it is
            Assert.Contains(Hostile.Replace('"', '\''), document.Body!.TextContent); // a note, between marks of ours
        }
    }

    // A reason in the description of an earlier version, unquoted; a note and a name as stored before characters were refused.
    private const string Foreign = "checked\nRELEASED TO SERVICE\u202e\u201d NOT AIRWORTHY, says the note at such length that it needs a second line RELEASED TO SERVICE";

    [Fact]
    public void Foreign_words_are_quoted_attributed_and_never_a_line_of_their_own()
    {
        var key = new Records.Sources.RecordKey("shop-cards", "card 7", 2);
        var now = Snapshot() with
        {
            DataProblems = [new DataProblem(DataProblemKind.RetractionWithoutRecord, "", new DateOnly(2026, 11, 19), $"shop-cards took back card 7, which it never sent: {Foreign}", [key])],
        };
        var line = Raised(DriftFlag(), FlagLineState.Acknowledged) with { Note = Foreign, AcknowledgedBy = "lead\nRELEASED TO SERVICE" };
        var report = WeeklyReport.Compose(now, null, Inputs(ReportScope.WholeFleet, line)).RenderWhole();
        const string Shown = "\u201cchecked / RELEASED TO SERVICE\\u202E' NOT AIRWORTHY, says the note at such length that it needs a second line RELEASED TO SERVICE\u201d";
        var mail = Unwrapped(report.Text.Replace("\n> ", "\n", StringComparison.Ordinal).Replace("  > ", "  ", StringComparison.Ordinal));
        foreach (var text in new[] { mail, Parse(report.Html).Body!.TextContent, Parse(Page(report)).Body!.TextContent })
        {
            Assert.Contains("shop-cards took back \u201ccard 7\u201d, which it never sent. The reason that shop-cards gave: " + Shown, text);
            Assert.Contains("acknowledged by \u201clead / RELEASED TO SERVICE\u201d on 21 Nov 2026", text);
            Assert.Contains("Note by \u201clead / RELEASED TO SERVICE\u201d: " + Shown, text);
            Assert.DoesNotContain('\u202e', text);
        }

        Assert.All(report.Text.Split('\n'), l => Assert.False(l.TrimStart().StartsWith("RELEASED", StringComparison.Ordinal), l));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void No_line_of_text_is_longer_than_78_columns(bool isHostile)
    {
        var now = Snapshot();
        if (isHostile) now = now with { Fleet = [.. now.Fleet, Line(13) with { Registration = new string('Z', 200) }] };
        var text = WeeklyReport.Compose(now, WeekBefore(), AllFlags(ReportScope.WholeFleet)).RenderWhole().Text;
        Assert.All(text.Split('\n'), l => Assert.InRange(l.Length, 0, TextReport.Columns));
        Assert.DoesNotContain('\r', text);
    }

    [Fact]
    public void The_same_snapshot_gives_the_same_bytes()
    {
        var again = WeeklyReport.Compose(Snapshot(), WeekBefore(), AllFlags(ReportScope.WholeFleet)).RenderWhole();
        Assert.Equal(Fleet.Subject, again.Subject);
        Assert.Equal(Fleet.Text, again.Text);
        Assert.Equal(Fleet.Html, again.Html);
        Assert.Equal(Fleet.DocumentJson, again.DocumentJson);
        Assert.Equal(Fleet.Plots.Keys, again.Plots.Keys);
        Assert.All(Fleet.Plots, p => Assert.Equal(p.Value, again.Plots[p.Key]));
    }

    [Fact]
    public void Snapshot_and_inputs_survive_JSON_and_give_the_same_report()
    {
        var snapshot = JsonSerializer.Deserialize<FleetTrend.Trends.TrendSnapshot>(JsonSerializer.Serialize(Snapshot(), TrendJson.Options), TrendJson.Options)!;
        var json = JsonSerializer.Serialize(AllFlags(new ReportScope(Home)), TrendJson.Options);
        var inputs = JsonSerializer.Deserialize<ReportInputs>(json, TrendJson.Options)!;
        var again = WeeklyReport.Compose(snapshot, null, inputs).RenderWhole();
        Assert.Equal(AtHome.Subject, again.Subject);
        Assert.Equal(AtHome.Html, again.Html);
        Assert.Equal(AtHome.Text, again.Text);
    }

    [Fact] // The page is rendered from the stored document, not from the mail.
    public void A_stored_document_is_the_mail_again_with_its_plots_at_our_address()
    {
        foreach (var report in new[] { Fleet, AtHome })
        {
            var document = ReportDocumentJson.Read(report.DocumentJson);
            Assert.Equal(report.Html, MailHtml.Render(document));
            Assert.Equal(report.Text, TextReport.Render(document));
            Assert.Equal(report.DocumentJson, ReportDocumentJson.Write(document));
        }

        var page = Parse(Page(Fleet));
        Assert.Equal(Fleet.Plots.Keys.Select(name => "/reports/7/plots/" + name), page.QuerySelectorAll("img").Select(i => i.GetAttribute("src")!));
        Assert.Equal(
            Parse(Fleet.Html).Body!.TextContent.Trim(),
            page.Body!.TextContent.Trim());
    }

    [Fact] // Stored JSON outlives the code: the kinds of block and run keep their names.
    public void A_document_stored_by_an_earlier_version_still_reads()
    {
        const string Stored = """
            {"title":"T","caution":"C","origin":[{"key":"As of","value":"today"}],"sections":[{"name":"s","heading":"H","blocks":[
            {"$type":"paragraph","line":{"runs":[{"$type":"plain","text":"a "},{"$type":"strong","text":"b"},{"$type":"link","text":"c","target":"/flags/1"}]},"isAside":true},
            {"$type":"sub-heading","text":"d"},{"$type":"bullets","items":[{"runs":[{"$type":"plain","text":"e"}]}]},
            {"$type":"table","caption":"f","columns":[{"heading":"g","isNumeric":true}],"rows":[[{"runs":[{"$type":"number",
              "figure":{"value":1.5,"lower":1,"upper":2,"confidence":0.95,"unit":"","events":3,"exposureHours":100,"method":"m"},"style":"Times","methodNumber":1}]}]]},
            {"$type":"card","heading":{"runs":[]},"badge":"NEW","blocks":[]},
            {"$type":"picture","name":"p.png","altText":"q","caption":"r","width":640,"height":200}]}]}
            """;
        var page = Parse(ReportHtml.Render(ReportDocumentJson.Read(Stored), name => "/" + name));
        Assert.Equal("1.5 times95 % interval 1.0 to 2.03 events in 100 h [1]", page.QuerySelector("tbody th")!.TextContent);
        Assert.All(["a bc", "d", "e", "f", "g", "NEW", "r"], words => Assert.Contains(words, page.Body!.TextContent, StringComparison.Ordinal));
        Assert.Equal("/p.png", page.QuerySelector("img[alt=q]")!.GetAttribute("src"));
    }

    private static string Unwrapped(string text) =>
        string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}

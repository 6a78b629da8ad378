using AngleSharp.Html.Parser;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Trends.Flags;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

/// <summary>
/// A flag's own statement, the mail's text, its HTML and the flag's page say one thing with the same words. Expected words are by hand from
/// the invented fleet.
/// </summary>
public sealed class SameWordsTests
{
    [Theory]
    [InlineData(Condition.Crack, "3 cracks")]
    [InlineData(Condition.LeakTrace, "3 leak traces")]
    [InlineData(Condition.Erosion, "3 cases of erosion")]
    [InlineData(Condition.Corrosion, "3 cases of corrosion")]
    [InlineData(Condition.Looseness, "3 cases of looseness")]
    [InlineData(Condition.MissingPiece, "3 missing pieces")]
    [InlineData(Condition.Distortion, "3 cases of distortion")]
    [InlineData(Condition.Wear, "3 cases of wear")]
    [InlineData(Condition.Hardening, "3 cases of hardening")]
    [InlineData(Condition.Other, "3 other findings")]
    public void An_aircraft_that_gets_worse(Condition condition, string count)
    {
        var kinds = new Dictionary<string, LocationKind>(StringComparer.Ordinal) { [FlangeWelds.Name] = FlangeWelds };
        var flag = ChangeFlag.Propose(Worse() with { Condition = condition }, kinds);
        var now = Snapshot() with { Flags = [flag] };
        Assert.All(
            Everywhere(now, flag),
            said => Assert.All(
                [
                    count, "since about November 2025", "2 of them at cyl 3 flange weld", "Similar aircraft would give 0.21 in the same looks",
                    "Before that it had 1 where similar aircraft would give 1.4", "Chance alone would raise a call like this about once in 420 aircraft-years.",
                ],
                words => Assert.Contains(words, said, StringComparison.Ordinal)));
        Assert.All(Everywhere(now, flag), said => Assert.DoesNotContain(FlangeWeld, said, StringComparison.Ordinal));
        var card = Everywhere(now, flag)[1];
        Assert.Contains("It began between 1 Oct 2025 and 28 Dec 2025, with 90 % chance.", card, StringComparison.Ordinal);
        Assert.Contains("chance alone raises 1.0 flags per 50 aircraft-years, all kinds of finding together", card, StringComparison.Ordinal);
    }

    [Fact]
    public void A_base_where_parts_fail_sooner()
    {
        var now = Snapshot();
        var trend = now.PartLives.First(t => t.Base == Away && t.Contrast is not null);
        var flag = BaseLifeFlag.Propose(trend, ShippedKinds.All.First(k => k.Failures.Count > 0), 4);
        Assert.All(
            Everywhere(now with { Flags = [flag] }, flag),
            said =>
            {
                Assert.Contains("xhaust gaskets of trainer-4 fail sooner ", said, StringComparison.Ordinal);
                Assert.Contains("half by 395 h, against 742 h elsewhere", said, StringComparison.Ordinal);
            });
    }

    private static LocationKind FlangeWelds => ShippedKinds.All.Single(k => k.Name == "flange-weld");

    /// <summary>The statement, the mail's two parts and the page of the flag, each as one line.</summary>
    private static IReadOnlyList<string> Everywhere(Trends.TrendSnapshot now, ProposedFlag flag)
    {
        var raised = Raised(flag);
        var mail = WeeklyReport.Compose(now, null, Inputs(ReportScope.WholeFleet, raised)).RenderWhole();
        var page = ReportHtml.Render(FlagSection.Compose(now, raised, new Uri("http://fleet.example:8080/")));
        return [.. new[] { flag.Statement, mail.Text, Shown(mail.Html), Shown(page) }
            .Select(text => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)))];
    }

    private static string Shown(string html) => new HtmlParser().ParseDocument(html).Body!.TextContent;
}

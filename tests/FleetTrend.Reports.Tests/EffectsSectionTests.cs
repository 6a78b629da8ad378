using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Statistics.Effects;
using FleetTrend.Trends.Effects;
using static FleetTrend.Reports.Tests.InventedFigures;
using static FleetTrend.Reports.Tests.InventedFleet;

namespace FleetTrend.Reports.Tests;

public sealed class EffectsSectionTests
{
    [Fact]
    public void The_page_has_every_effect_with_its_counts_and_its_interval()
    {
        var html = ReportHtml.Render(EffectsSection.Compose(Snapshot() with { Effects = [Practice(EffectVerdict.Helped), Action(EffectVerdict.TooEarly)] }));
        Assert.All(
            [
                "Sandvale since 3 Feb 2026, ", "gaskets tightened in two steps", "Failed gaskets", "21 (8.0)", "3 (6.5)", "0.18 times", "95 % interval 0.050 to 0.51",
                "Helped", "ZZ-A07, acted on 4 May 2026", "Cracks", "Too early to tell", "as of 22 Nov 2026 05:30 UTC",
            ],
            words => Assert.Contains(words, html, StringComparison.Ordinal));
    }

    [Fact]
    public void The_report_tells_those_with_a_verdict_and_links_the_counts()
    {
        var text = Text(ReportScope.WholeFleet, Practice(EffectVerdict.NoBetter), Action(EffectVerdict.TooEarly));
        Assert.Matches("gaskets tightened in two steps.: failed gaskets. It is no better.", text);
        Assert.DoesNotContain("acted on 4 May 2026", text, StringComparison.Ordinal);
        Assert.DoesNotContain("DID IT HELP?", Text(ReportScope.WholeFleet, Action(EffectVerdict.TooEarly)), StringComparison.OrdinalIgnoreCase);
    }

    [Fact] // A base reads what was done there, or everywhere.
    public void A_report_of_a_base_tells_nothing_of_other_bases() =>
        Assert.DoesNotContain("Did it help?", Text(new ReportScope(Home), Practice(EffectVerdict.Helped)), StringComparison.OrdinalIgnoreCase);

    [Fact]
    public void Where_nothing_was_done_the_page_says_so() =>
        Assert.Contains("Nothing was recorded as done", ReportHtml.Render(EffectsSection.Compose(Snapshot())), StringComparison.Ordinal);

    private static string Text(ReportScope scope, params Effect[] effects) => string.Join(
        ' ',
        WeeklyReport.Compose(Snapshot() with { Effects = effects }, null, Inputs(scope)).RenderWhole().Text
            .Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static Effect Practice(EffectVerdict verdict) => Action(verdict) with
    {
        FlagSubject = null,
        Registration = null,
        Practice = new RecordKey("shop-cards", "p-1", 1),
        What = "gaskets tightened in two steps",
        Base = Away,
        Condition = null,
        Kind = "gasket",
        ActionDate = new DateOnly(2026, 2, 3),
        Statement = verdict == EffectVerdict.NoBetter ? "It is no better." : "It helped.",
    };

    private static Effect Action(EffectVerdict verdict) => new()
    {
        TypeGroup = Trainer,
        FlagSubject = "airframe-drift/ZZ-A07/Crack",
        Registration = Tail(7),
        Condition = Condition.Crack,
        ActionDate = new DateOnly(2026, 5, 4),
        Verdict = verdict,
        LogOdds = 2.4,
        BeforeSinceDate = new DateOnly(2024, 8, 1),
        FoundBefore = 21,
        ExpectedBefore = 8,
        FoundAfter = 3,
        ExpectedAfter = 6.5,
        OthersFoundAfter = 14,
        AfterOverBefore = Ratio(0.18, 0.05, 0.51, 24, 640.2),
        AfterOverNorm = Ratio(0.46, 0.13, 1.2, 3, 640.2),
        Statement = "It helped.",
    };
}

using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;
using FleetTrend.Trends.AuthorityDrafts;

namespace FleetTrend.Trends.Tests;

/// <summary>Drafts for an authority, by the letter.</summary>
public sealed class AuthorityDraftTests
{
    private const string Gasket = "exhaust/cyl-3/gasket";
    private const string Weld = "exhaust/cyl-3/flange-weld";

    // Written by hand from the facts: a leak at a gasket of 500 h, deferred; an hour is a day. Paragraphs as 14 CFR 121.703(a)(4) and (5), 135.415(a)(4) and
    // (5) and 145.221 have them; AC 20-109A of 8 April 1993 for Form 8010-4; JASC titles by the FAA table of 27 October 2008.
    [Fact]
    public void A_leak_at_a_gasket_gives_this_text()
    {
        var aircraft = new FleetBuilder("ZZ-A07").Life(Gasket, "gasket", 400, 500, partNumber: "PN-100", serialNumber: "S-7")
            .Found(Gasket, "gasket", 500, Condition.LeakTrace, actions: [(ActionKind.Deferred, 500)], open: true, lastGood: 400).Build();
        var draft = Assert.Single(AuthorityDraft.Build(aircraft, [], "Four-cylinder trainer", FleetBuilder.AsOf));
        Assert.Equal(
            """
            DRAFT. It may have to be reported: you judge.
            FleetTrend put these facts together from the records. It does not decide whether
            they have to be reported, and it sends nothing.

            UNDER WHAT IT MAY FALL
            - 14 CFR 121.703(a)(4), 135.415(a)(4) (certificate holder under part 121 or 135):
              an exhaust system that in flight damages the engine, structure beside it, equipment or components.
            - 14 CFR 121.703(a)(5), 135.415(a)(5) (certificate holder under part 121 or 135):
              a component that in flight brings smoke, vapour, or toxic or noxious fumes into the crew or passenger compartment.
            - 14 CFR 145.221 (certificated repair station):
              a serious failure, malfunction or defect of an article.
              A report under it is due within 96 hours of its discovery.
            - FAA Form 8010-4, AC 20-109A: a malfunction or defect report, voluntary for part 91
              owners and mechanics.

            WHAT WAS FOUND
            Condition: leak trace
            Location: exhaust gasket, exhaust/cyl-3/gasket
            JASC code: 7810 Engine collector/tailpipe/nozzle
            Found on: 15 May 2025
            It arose between: 400.0 h and 500.0 h of the aircraft
            How it was found: ____________________
            In flight: what happened, damage, fumes: ____________________
            Apparent cause: ____________________

            AIRCRAFT
            Registration: ZZ-A07
            Type group in these records: Four-cylinder trainer
            Make, model, serial number: ____________________
            Time in service when found: 500.0 h
            Engine make, model, serial number: ____________________
            Engine time since new, since overhaul: ____________________

            PART
            Name: exhaust gasket
            Part number: PN-100
            Serial number: S-7
            Maker: ____________________
            Time on the part when found: 500.0 h
            Time since overhaul: ____________________

            WHAT WAS DONE
            - Deferred on 15 May 2025 at 500.0 h
            It is open.

            OTHER PERTINENT INFORMATION
            ____________________

            RECORDS BEHIND IT
            - test ZZ-A07-1, revision 1
            As known on 1 Jan 2026 00:00 UTC. Notes of the records are left out: they may name persons.

            """,
            draft.Text);
        Assert.Equal((new RecordKey("test", "ZZ-A07-1", 1), true, true, null), (draft.Key, draft.IsOpen, draft.IsCurrent, draft.WhyNot));
    }

    [Fact] // A crack that the first look found, without a part, a size of 12 mm, welded; and one that a later look found gone.
    public void What_the_records_do_not_tell_is_a_blank()
    {
        var aircraft = new FleetBuilder("ZZ-A07")
            .Found(Weld, "flange-weld", 100, atEntry: true, sizes: [(100, 4.5), (120, 12)], closedBy: ActionKind.WeldRepaired, closedAt: 130)
            .Found(Weld, "flange-weld", 600, closedAt: 650, actions: []).Build();
        var drafts = AuthorityDraft.Build(aircraft, [new Location(Weld, ShippedKinds.Get("flange-weld"), JascCode: "7800")], "Trainer", FleetBuilder.AsOf);
        Assert.Equal([600, 100], drafts.Select(d => d.FoundDate.DayNumber - FleetBuilder.Start.DayNumber));
        var (gone, welded) = (drafts[0].Text!, drafts[1].Text!);
        Assert.Contains("\nCondition: crack, 12 mm\n", welded, StringComparison.Ordinal);
        Assert.Contains("\nJASC code: 7800 Engine exhaust system\n", welded, StringComparison.Ordinal);
        Assert.Contains("\nIt arose between: ____________________\n", welded, StringComparison.Ordinal);
        Assert.Contains("\nPart number: ____________________\nSerial number: ____________________\n", welded, StringComparison.Ordinal);
        Assert.Contains("\nTime on the part when found: ____________________\n", welded, StringComparison.Ordinal);
        Assert.Contains("\nWHAT WAS DONE\n- Welded on 10 May 2024 at 130.0 h\n\n", welded, StringComparison.Ordinal);
        Assert.Contains("\nWHAT WAS DONE\nNo action is recorded: ____________________\nA look on 12 Oct 2025 found the location good.\n\n", gone, StringComparison.Ordinal);
        Assert.DoesNotContain("must be reported", gone + welded, StringComparison.OrdinalIgnoreCase);
    }

    // 731 days from the start to the moment: 90 days before it is day 641. What is open stays, however old.
    [Fact]
    public void Open_and_recent_findings_are_current()
    {
        var drafts = AuthorityDraft.Build(
            new FleetBuilder("ZZ-A07").Found(Weld, "flange-weld", 100, open: true).Found(Weld, "flange-weld", 641).Found(Weld, "flange-weld", 642).Build(), [], "Trainer", FleetBuilder.AsOf);
        Assert.Equal([(642, true), (641, false), (100, true)], drafts.Select(d => (d.FoundDate.DayNumber - FleetBuilder.Start.DayNumber, d.IsCurrent)));
    }

    [Fact]
    public void What_is_not_of_such_a_kind_has_no_draft_and_says_why()
    {
        var draft = Assert.Single(AuthorityDraft.Build(new FleetBuilder("ZZ-A07").Found("exhaust/cyl-1/probe", "probe", 100, Condition.Wear).Build(), [], "Trainer", FleetBuilder.AsOf));
        Assert.Equal((null, 0), (draft.Text, draft.Paragraphs.Count));
        Assert.Equal(
            "No draft: wear at exhaust/cyl-1/probe (probe clamped to a pipe, JASC 7722 EGT/TIT indicating) is by its kind none of the conditions that 14 CFR 121.703(a)(4), "
            + "135.415(a)(4); 14 CFR 121.703(a)(5), 135.415(a)(5); 14 CFR 145.221 may concern there: crack, leak trace, erosion, looseness, missing piece, distortion, "
            + "other finding. That does not say that nothing has to be reported: you judge.",
            draft.WhyNot);
    }

    [Theory] // By the system in the path, or by the JASC code, of a kind that an operator added too; 4 and 5 are the paragraphs of (a), 145 is 145.221.
    [InlineData("exhaust/left/y-weld", "7810", Condition.Crack, "4 5 145")]
    [InlineData("exhaust/cyl-1/port-face", "8530", Condition.Erosion, "4 5 145")]
    [InlineData("engine/collector", "7810", Condition.Looseness, "4 5")]
    [InlineData("cabin/heat-muff", "2140", Condition.LeakTrace, "5 145")]
    [InlineData("induction/cyl-2/coupling", "7160", Condition.LeakTrace, "5 145")]
    [InlineData("induction/cyl-2/coupling", "7160", Condition.Hardening, "")]
    [InlineData("induction/cyl-2/tube", "8530", Condition.Crack, "145")]
    [InlineData("oil/cooler-fitting", null, Condition.LeakTrace, "145")]
    [InlineData("oil/cooler-fitting", null, Condition.Looseness, "")]
    [InlineData("exhaust/left/clamp-bolt", "7810", Condition.Corrosion, "")]
    public void Paragraphs_are_found_by_system_code_and_condition(string path, string? jascCode, Condition condition, string expected) =>
        Assert.Equal(expected, string.Join(' ', ReportingParagraphs.For(path, jascCode, condition)
            .Select(p => p.Citation.Contains("(a)(4)", StringComparison.Ordinal) ? "4" : p.Citation.Contains("(a)(5)", StringComparison.Ordinal) ? "5" : "145")));

    [Fact] // Only 14 CFR 145.221 was read to say by when.
    public void A_time_limit_stands_where_its_paragraph_says_it() =>
        Assert.All(ReportingParagraphs.All, p => Assert.Equal(p.Citation == "14 CFR 145.221" ? "within 96 hours of its discovery" : null, p.TimeLimit));
}

using FleetTrend.Contracts.V1;
using FleetTrend.Intake.Rules;
using Condition = FleetTrend.Records.Findings.Condition;
using Domain = FleetTrend.Records.Layouts;

namespace FleetTrend.Intake.Tests.Rules;

/// <summary>Rules of layout.proto, source_service.proto, flag_service.proto and report_service.proto.</summary>
public sealed class LayoutRulesTests
{
    [Fact]
    public void A_kind_is_taken_as_sent()
    {
        var kind = LayoutRules.Parse(Kind(), out var refusals);

        Assert.Empty(refusals);
        Assert.Equal(
            new Domain.LocationKind(
                "oil-cooler-fitting", "Fitting of the oil cooler", "Oil below it.", "7921", [Condition.LeakTrace, Condition.Crack],
                [Condition.LeakTrace], [Condition.Crack], [new(Condition.Crack, ["Line."])], ["Torque."]),
            kind);
    }

    [Fact]
    public void Every_broken_rule_of_a_kind_is_told()
    {
        Assert.Equal([("location_kind.name", "FIELD_REQUIRED"), ("location_kind.title", "FIELD_REQUIRED"), ("location_kind.conditions", "FIELD_REQUIRED")], OfKind(null));
        Assert.Equal([("location_kind.name", "PATTERN_MISMATCH")], OfKind(k => k.Name = "Oil"));
        Assert.Equal([("location_kind.jasc_code", "PATTERN_MISMATCH")], OfKind(k => k.JascCode = "79"));
        Assert.Equal([("location_kind.conditions[1]", "ENUM_UNKNOWN")], OfKind(k => k.Conditions[1] = "Crack").Take(1));
        Assert.Equal([("location_kind.conditions[2]", "DUPLICATE_LINE")], OfKind(k => k.Conditions.Add("CONDITION_CRACK")));
        Assert.Equal([("location_kind.failure_conditions[1]", "CONDITION_NOT_AT_KIND")], OfKind(k => k.FailureConditions.Add("CONDITION_WEAR")));
        Assert.Equal([("location_kind.watched_conditions[0]", "ENUM_UNKNOWN")], OfKind(k => k.WatchedConditions[0] = "CONDITION_UNSPECIFIED"));
        Assert.Equal([("location_kind.has_life", "FIELD_NOT_ALLOWED")], OfKind(k => { k.HasLife = true; k.FailureConditions.Clear(); }));
        Assert.Equal([("location_kind.checks[0].condition", "CONDITION_NOT_AT_KIND")], OfKind(k => k.Checks[0].Condition = "CONDITION_WEAR"));
        Assert.Equal([("location_kind.checks[0].lines", "FIELD_REQUIRED")], OfKind(k => k.Checks[0].Lines.Clear()));
        Assert.Equal([("location_kind.base_checks", "TOO_MANY_ITEMS")], OfKind(k => k.BaseChecks.Add(Enumerable.Repeat("x", 10))));
        Assert.Equal([("location_kind.base_checks[0]", "TEXT_NOT_PRINTABLE")], OfKind(k => k.BaseChecks[0] = " x"));
    }

    [Fact]
    public void A_layout_is_taken_as_sent()
    {
        var layout = LayoutRules.Parse(Layout(), Valid.Kinds, out var refusals);

        Assert.Empty(refusals);
        Assert.Equal(("wheels", "exhaust/wheel", "part"), (layout.Name, layout.Locations[0].Path, layout.Locations[0].Kind.Name));
    }

    [Fact]
    public void Every_broken_rule_of_a_layout_is_told()
    {
        Assert.Equal([("layout.name", "FIELD_REQUIRED"), ("layout.locations", "FIELD_REQUIRED")], Check(null));
        Assert.Equal([("layout.name", "PATTERN_MISMATCH")], Check(l => l.Name = "Wheels"));
        Assert.Equal([("layout.title", "TEXT_TOO_LONG")], Check(l => l.Title = new string('t', 121)));
        Assert.Equal([("layout.locations[0].path", "PATTERN_MISMATCH")], Check(l => l.Locations[0].Path = "wheel"));
        Assert.Equal([("layout.locations[0].kind", "FIELD_REQUIRED")], Check(l => l.Locations[0].Kind = ""));
        Assert.Equal([("layout.locations[0].kind", "LOCATION_KIND_UNKNOWN")], Check(l => l.Locations[0].Kind = "wheel"));
        Assert.Equal([("layout.locations[0].look_for", "TEXT_NOT_PRINTABLE")], Check(l => l.Locations[0].LookFor = "a\nb"));
        Assert.Equal([("layout.locations[0].jasc_code", "PATTERN_MISMATCH")], Check(l => l.Locations[0].JascCode = "78"));
        Assert.Equal([("layout.locations[1].path", "DUPLICATE_LINE")], Check(l => l.Locations.Add(l.Locations[0].Clone())));
        Assert.Equal([("layout.locations", "TOO_MANY_ITEMS")], Check(l => l.Locations.AddRange(Enumerable.Repeat(new Location(), 500))));
    }

    [Fact]
    public void Every_broken_rule_of_a_type_group_is_told()
    {
        LayoutRules.Parse(new TypeGroup { Name = "G", Title = " t", Layout = "" }, out var refusals);
        Assert.Equal(["type_group.name", "type_group.title", "type_group.layout"], refusals.Select(r => r.Field));
        LayoutRules.Parse((TypeGroup?)null, out refusals);
        Assert.Equal(["type_group.name", "type_group.layout"], refusals.Select(r => r.Field));
    }

    [Fact]
    public void Every_broken_rule_of_a_source_is_told()
    {
        Assert.Equal(["source.name"], SourceRules.Check(null).Select(r => r.Field));
        Assert.Equal(["source.name", "source.title"], SourceRules.Check(new Source { Name = "a_b", Title = "\u0001" }).Select(r => r.Field));
        Assert.Empty(SourceRules.Check(new Source { Name = "shop-cards", Title = "Cards of the shop" }));
    }

    [Fact]
    public void An_answer_to_a_flag_says_who_and_a_closing_what_was_done()
    {
        Assert.Equal(["acknowledged_by"], FlagAnswerRules.Acknowledgement(new AcknowledgeFlagRequest()).Select(r => r.Field));
        Assert.Empty(FlagAnswerRules.Acknowledgement(new AcknowledgeFlagRequest { AcknowledgedBy = "director" }));
        Assert.Equal(["closed_by", "comment"], FlagAnswerRules.Closing(new CloseFlagRequest()).Select(r => r.Field));
        Assert.Empty(FlagAnswerRules.Closing(new CloseFlagRequest { ClosedBy = "director", Comment = "hanger renewed" }));
    }

    [Fact]
    public void Recipients_are_bare_mail_addresses()
    {
        Assert.Empty(ReportRules.Recipients(new SetRecipientsRequest { Base = "*", Addresses = { "shop@example.org" } }));
        Assert.Equal(
            [("base", "FIELD_REQUIRED"), ("addresses[0]", "PATTERN_MISMATCH"), ("addresses[1]", "PATTERN_MISMATCH"), ("addresses[2]", "TEXT_NOT_PRINTABLE")],
            Pairs(ReportRules.Recipients(new SetRecipientsRequest { Addresses = { "shop", "Shop <shop@example.org>", "a@b\r\nBcc: c@d" } })));
        Assert.Equal(
            [("addresses", "TOO_MANY_ITEMS")],
            Pairs(ReportRules.Recipients(new SetRecipientsRequest { Base = "North", Addresses = { Enumerable.Repeat("a@example.org", 51) } })));
        Assert.Equal([("request_id", "FIELD_REQUIRED")], Pairs(ReportRules.Request(new RequestReportRequest())));
    }

    private static LocationKind Kind() => new()
    {
        Name = "oil-cooler-fitting",
        Title = "Fitting of the oil cooler",
        LookFor = "Oil below it.",
        JascCode = "7921",
        Conditions = { "CONDITION_LEAK_TRACE", "CONDITION_CRACK" },
        FailureConditions = { "CONDITION_LEAK_TRACE" },
        WatchedConditions = { "CONDITION_CRACK" },
        Checks = { new ConditionChecks { Condition = "CONDITION_CRACK", Lines = { "Line." } } },
        BaseChecks = { "Torque." },
    };

    private static IEnumerable<(string Field, string Reason)> OfKind(Action<LocationKind>? change)
    {
        var kind = change is null ? null : Kind();
        change?.Invoke(kind!);
        Assert.Null(LayoutRules.Parse(kind, out var refusals));
        return Pairs(refusals);
    }

    private static Layout Layout() => new()
    {
        Name = "wheels",
        Title = "Turbine wheels",
        Locations = { new Location { Path = "exhaust/wheel", Kind = "part", JascCode = "7810" } },
    };

    private static IEnumerable<(string Field, string Reason)> Check(Action<Layout>? change)
    {
        var layout = change is null ? null : Layout();
        change?.Invoke(layout!);
        LayoutRules.Parse(layout, Valid.Kinds, out var refusals);
        return Pairs(refusals);
    }

    private static IEnumerable<(string Field, string Reason)> Pairs(IReadOnlyList<Refusal> refusals) =>
        refusals.Select(r => (r.Field, r.Reason.Name));
}

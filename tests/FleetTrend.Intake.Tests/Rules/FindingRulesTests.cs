using FleetTrend.Contracts.V1;
using FleetTrend.Records.Layouts;
using Google.Protobuf.Reflection;
using static FleetTrend.Intake.Tests.Rules.RefusalAssert;
using Domain = FleetTrend.Records.Findings;

namespace FleetTrend.Intake.Tests.Rules;

/// <summary>Rules of protos/fleettrend/v1/finding.proto.</summary>
public sealed class FindingRulesTests
{
    [Fact]
    public void A_finding_is_taken_as_sent()
    {
        var finding = Accepted<Domain.Finding>(Valid.Finding(f =>
        {
            f.Location = Valid.Gasket;
            f.Condition = Condition.LeakTrace;
            f.TraceColour = TraceColour.Rose;
            f.SameEventAs = "card 16";
            f.ClearSizeMm();
        }));

        Assert.Equal(
            (Domain.Condition.LeakTrace, Domain.TraceColour.Rose, "card 16", null, 812.4),
            (finding.Condition, finding.TraceColour, finding.SameEventAs, finding.SizeMillimetres, finding.TimeInService.Value));
    }

    [Fact]
    public void A_grade_not_told_is_a_defect()
    {
        Assert.Equal(Domain.FindingGrade.Defect, Accepted<Domain.Finding>(Valid.Finding()).Grade);
        Assert.Equal(Domain.FindingGrade.Accepted, Accepted<Domain.Finding>(Valid.Finding(f => f.Grade = FindingGrade.Accepted)).Grade);
        Refused(Valid.Finding(f => f.Grade = (FindingGrade)3), Reasons.EnumUnknown, "finding.grade", "3");
    }

    [Fact]
    public void The_condition_is_told_and_known()
    {
        Refused(Valid.Finding(f => f.Condition = Condition.Unspecified), Reasons.FieldRequired, "finding.condition", "");
        Refused(Valid.Finding(f => f.Condition = (Condition)42), Reasons.EnumUnknown, "finding.condition", "42", "CONDITION_CRACK");
    }

    /// <summary>The list of kinds says which conditions make sense; every other one is refused with the list.</summary>
    [Theory]
    [InlineData(Valid.Weld, "flange-weld")]
    [InlineData(Valid.Gasket, "gasket")]
    public void The_condition_makes_sense_at_the_kind(string location, string kind)
    {
        var sensible = ShippedKinds.Get(kind).Conditions;
        foreach (var condition in Enum.GetValues<Domain.Condition>())
        {
            var record = Valid.Finding(f => (f.Location, f.Condition) = (location, (Condition)condition));
            if (sensible.Contains(condition))
                Accepted<Domain.Finding>(record);
            else
                Refused(record, Reasons.ConditionNotAtKind, "finding.condition", WordOf(condition), kind);
        }
    }

    [Fact]
    public void A_size_is_a_positive_number_of_millimetres()
    {
        Refused(Valid.Finding(f => f.SizeMm = 0), Reasons.NumberOutOfRange, "finding.size_mm", "0", "10,000");
        Refused(Valid.Finding(f => f.SizeMm = -2.5), Reasons.NumberOutOfRange, "finding.size_mm", "-2.5");
        Refused(Valid.Finding(f => f.SizeMm = 10_001), Reasons.NumberOutOfRange, "finding.size_mm", "10001");
        Refused(Valid.Finding(f => f.SizeMm = double.NegativeInfinity), Reasons.NumberNotFinite, "finding.size_mm", "-Infinity");
    }

    [Fact]
    public void A_colour_goes_with_a_leak_trace()
    {
        Refused(Valid.Finding(f => f.TraceColour = TraceColour.Blue), Reasons.FieldNotAllowed, "finding.trace_colour", "TRACE_COLOUR_BLUE", "CONDITION_LEAK_TRACE");
        Refused(Valid.Finding(f => f.TraceColour = (TraceColour)50), Reasons.EnumUnknown, "finding.trace_colour", "50");
    }

    [Fact]
    public void A_method_is_known() => Refused(Valid.Finding(f => f.Method = (LookMethod)50), Reasons.EnumUnknown, "finding.method", "50");

    [Fact]
    public void The_same_event_is_another_finding()
    {
        Refused(Valid.Finding(f => f.SameEventAs = "card 17"), Reasons.SelfReference, "finding.same_event_as", "card 17");
        Refused(Valid.Finding(f => f.SameEventAs = new string('c', 121)), Reasons.TextTooLong, "finding.same_event_as", new string('c', 120));
    }

    [Fact]
    public void A_note_is_up_to_2000_characters_of_any_script()
    {
        Assert.Equal("Riss neben der Naht, 5 mm\nπ ≈ 3", Accepted<Domain.Finding>(Valid.Finding(f => f.Note = "Riss neben der Naht, 5 mm\nπ ≈ 3")).Note);
        Refused(Valid.Finding(f => f.Note = new string('n', 2001)), Reasons.TextTooLong, "finding.note", new string('n', 120), "2,000");
        Refused(Valid.Finding(f => f.Note = "\u001b[2J"), Reasons.TextNotPrintable, "finding.note", "\\u001B[2J");
    }

    /// <summary>A condition as the contract writes it.</summary>
    private static string WordOf(Domain.Condition condition) =>
        FindingReflection.Descriptor.FindTypeByName<EnumDescriptor>("Condition").FindValueByNumber((int)condition).Name;
}

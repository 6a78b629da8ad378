using FleetTrend.Contracts.V1;
using static FleetTrend.Intake.Tests.Rules.RefusalAssert;
using Domain = FleetTrend.Records;

namespace FleetTrend.Intake.Tests.Rules;

/// <summary>Rules of installation.proto, inspection.proto and action.proto.</summary>
public sealed class PartRulesTests
{
    [Fact]
    public void Part_hours_of_an_installation_are_new_unknown_or_known()
    {
        Assert.Equal(Domain.Hours.Zero, Accepted<Domain.Installations.Installation>(Valid.Installation()).PartHours);
        Assert.Null(Accepted<Domain.Installations.Installation>(Valid.Installation(i => i.ClearPartHours())).PartHours);
        Assert.Equal(311.5, Accepted<Domain.Installations.Installation>(Valid.Installation(i => i.PartHours = 311.5)).PartHours!.Value.Value);
    }

    [Fact]
    public void Serial_and_part_numbers_are_short_and_printable()
    {
        Refused(Valid.Installation(i => i.SerialNumber = new string('s', 61)), Reasons.TextTooLong, "installation.serial_number", new string('s', 61));
        Refused(Valid.Installation(i => i.SerialNumber = "S\n1"), Reasons.TextNotPrintable, "installation.serial_number", "S\\u000A1");
        Refused(Valid.Installation(i => i.PartNumber = new string('p', 121)), Reasons.TextTooLong, "installation.part_number", new string('p', 120));
        Refused(Valid.Removal(r => r.SerialNumber = new string('s', 61)), Reasons.TextTooLong, "removal.serial_number", new string('s', 61));
    }

    [Fact]
    public void A_removal_has_a_reason()
    {
        Refused(Valid.Removal(r => r.Reason = RemovalReason.Unspecified), Reasons.FieldRequired, "removal.reason", "");
        Refused(Valid.Removal(r => r.Reason = (RemovalReason)77), Reasons.EnumUnknown, "removal.reason", "77", "REMOVAL_REASON_TIME_LIMIT");
    }

    [Fact]
    public void A_failed_part_was_not_found_good() => Refused(
        Valid.Removal(r => r.Reason = RemovalReason.Failed), Reasons.FieldNotAllowed, "removal.examined_good", "true");

    [Fact]
    public void An_inspection_has_an_occasion()
    {
        Refused(Valid.Inspection(i => i.Occasion = Occasion.Unspecified), Reasons.FieldRequired, "inspection.occasion", "");
        Refused(Valid.Inspection(i => i.Occasion = (Occasion)(-1)), Reasons.EnumUnknown, "inspection.occasion", "-1");
    }

    [Fact]
    public void An_inspection_names_each_location_once() => Refused(
        Valid.Inspection(i => i.Looks[1].Location = Valid.Weld), Reasons.DuplicateLine, "inspection.looks[1].location", Valid.Weld);

    [Fact]
    public void A_line_says_what_was_done()
    {
        Refused(Valid.Inspection(i => i.Looks[1].State = LookState.Unspecified), Reasons.FieldRequired, "inspection.looks[1].state", "", "LOOK_STATE_NOT_EXAMINED");
        Refused(Valid.Inspection(i => i.Looks[0].State = (LookState)9), Reasons.EnumUnknown, "inspection.looks[0].state", "9");
        Refused(Valid.Inspection(i => i.Looks[0].Method = (LookMethod)99), Reasons.EnumUnknown, "inspection.looks[0].method", "99");
    }

    [Fact]
    public void An_inspection_has_at_most_500_lines() => Refused(
        Valid.Inspection(i => i.Looks.AddRange(Enumerable.Repeat(new LocationLook(), 499))), Reasons.TooManyItems, "inspection.looks", "501");

    [Fact]
    public void An_inspection_may_say_nothing_of_any_location() =>
        Assert.Empty(Accepted<Domain.Inspections.Inspection>(Valid.Inspection(i => i.Looks.Clear())).Looks);

    [Fact]
    public void An_action_has_a_kind()
    {
        Refused(Valid.Action(a => a.Kind = ActionKind.Unspecified), Reasons.FieldRequired, "action.kind", "");
        Refused(Valid.Action(a => a.Kind = (ActionKind)88), Reasons.EnumUnknown, "action.kind", "88");
    }

    [Fact]
    public void Part_hours_of_an_action_go_with_a_replacement_where_absent_means_new()
    {
        Assert.Equal(Domain.Hours.Zero, Accepted<Domain.Actions.CorrectiveAction>(Valid.Action()).PartHours);
        Assert.Equal(40.0, Accepted<Domain.Actions.CorrectiveAction>(Valid.Action(a => a.PartHours = 40)).PartHours!.Value.Value);
        Assert.Null(Accepted<Domain.Actions.CorrectiveAction>(Valid.Action(a => a.Kind = ActionKind.Cleaned)).PartHours);
        Refused(
            Valid.Action(a =>
            {
                a.Kind = ActionKind.WeldRepaired;
                a.PartHours = 40;
            }), Reasons.FieldNotAllowed, "action.part_hours", "40", "ACTION_KIND_REPLACED");
    }

    [Fact]
    public void A_note_is_up_to_2000_characters() => Refused(
        Valid.Action(a => a.Note = new string('n', 2001)), Reasons.TextTooLong, "action.note", new string('n', 120), "2,000");
}

using FleetTrend.Records.Aircraft;
using static FleetTrend.Intake.Tests.Rules.RefusalAssert;
using Assignment = FleetTrend.Contracts.V1.Assignment;

namespace FleetTrend.Intake.Tests.Rules;

/// <summary>Rules of protos/fleettrend/v1/aircraft.proto.</summary>
public sealed class AircraftRulesTests
{
    [Fact]
    public void An_aircraft_is_taken_as_sent()
    {
        var airframe = Accepted<Airframe>(Valid.Aircraft(a =>
        {
            a.Registration = "zz-a07";
            a.MeterOffsetHours = -12.5;
            a.RetiredDate = Valid.Day(2024, 1, 1);
        }));

        Assert.Equal("ZZ-A07", airframe.Registration);
        Assert.Equal(-125, airframe.MeterOffset.Tenths);
        Assert.Equal(new DateOnly(2024, 1, 1), airframe.RetiredDate);
        Assert.Equal(["North", "South"], airframe.Assignments.Select(a => a.Base));
    }

    [Fact] // aircraft.proto says what absent means.
    public void Without_an_offset_the_meter_has_counted_from_new() =>
        Assert.Equal(0, Accepted<Airframe>(Valid.Aircraft(a => a.MeterOffsetHours = 0)).MeterOffset.Tenths);

    [Fact]
    public void It_needs_a_mark() => Refused(Valid.Aircraft(a => a.Registration = "N?1"), Reasons.PatternMismatch, "aircraft.registration", "N?1");

    [Fact]
    public void It_needs_an_assignment() => Refused(Valid.Aircraft(a => a.Assignments.Clear()), Reasons.FieldRequired, "aircraft.assignments", "");

    [Fact]
    public void It_has_at_most_100_assignments() => Refused(
        Valid.Aircraft(a => a.Assignments.AddRange(Enumerable.Repeat(new Assignment(), 99))), Reasons.TooManyItems, "aircraft.assignments", "101");

    [Fact]
    public void Assignments_ascend_without_repeats()
    {
        Refused(
            Valid.Aircraft(a => a.Assignments[1].FromDate = Valid.Day(2024, 1, 1)),
            Reasons.DatesOutOfOrder, "aircraft.assignments[1].from_date", "2024-01-01", "2024-01-01");
        Refused(
            Valid.Aircraft(a => a.Assignments[1].FromDate = Valid.Day(2023, 1, 1)),
            Reasons.DatesOutOfOrder, "aircraft.assignments[1].from_date", "2023-01-01");
        Refused(Valid.Aircraft(a => a.Assignments[0].FromDate = null), Reasons.FieldRequired, "aircraft.assignments[0].from_date", "");
    }

    [Theory]
    [InlineData("", "FIELD_REQUIRED", "")]
    [InlineData("*", "PATTERN_MISMATCH", "*")]
    [InlineData("North ", "TEXT_NOT_PRINTABLE", "North ")]
    [InlineData("No\u200brth", "TEXT_NOT_PRINTABLE", "No\\u200Brth")]
    public void The_base_is_1_to_60_printable_characters(string atBase, string reason, string shown) => Refused(
        Valid.Aircraft(a => a.Assignments[0].Base = atBase), Reasons.All.Single(r => r.Name == reason), "aircraft.assignments[0].base", shown);

    [Fact]
    public void The_base_is_not_longer_than_60() => Refused(
        Valid.Aircraft(a => a.Assignments[0].Base = new string('n', 61)), Reasons.TextTooLong, "aircraft.assignments[0].base", new string('n', 61));

    [Theory]
    [InlineData("", "FIELD_REQUIRED")]
    [InlineData("Trainer Four", "PATTERN_MISMATCH")]
    [InlineData("trainer-five", "TYPE_GROUP_NOT_REGISTERED")]
    public void The_type_group_is_registered(string group, string reason) => Refused(
        Valid.Aircraft(a => a.Assignments[1].TypeGroup = group), Reasons.All.Single(r => r.Name == reason), "aircraft.assignments[1].type_group", group);

    [Fact]
    public void It_does_not_leave_before_it_is_watched() => Refused(
        Valid.Aircraft(a => a.RetiredDate = Valid.Day(2023, 12, 31)), Reasons.DatesOutOfOrder, "aircraft.retired_date", "2023-12-31", "2024-01-01");

    [Fact]
    public void The_offset_is_a_number_of_hours() => Refused(
        Valid.Aircraft(a => a.MeterOffsetHours = -200_000.1), Reasons.NumberOutOfRange, "aircraft.meter_offset_hours", "-200000.1");
}

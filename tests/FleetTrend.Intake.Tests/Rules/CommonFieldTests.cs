using FleetTrend.Contracts.V1;
using static FleetTrend.Intake.Tests.Rules.RefusalAssert;

namespace FleetTrend.Intake.Tests.Rules;

/// <summary>Marks, hours, days and locations, in every kind of record that has them.</summary>
public sealed class CommonFieldTests
{
    public static TheoryData<string, double> HourFields() => new()
    {
        { "meter_reading.meter_hours", 0 }, { "meter_change.old_meter_hours", 0 }, { "meter_change.new_meter_hours", 0 },
        { "installation.time_in_service_hours", 0 }, { "installation.part_hours", 0 }, { "removal.time_in_service_hours", 0 },
        { "inspection.time_in_service_hours", 0 }, { "finding.time_in_service_hours", 0 }, { "action.time_in_service_hours", 0 },
        { "action.part_hours", 0 }, { "aircraft.meter_offset_hours", -200_000 },
    };

    [Theory]
    [MemberData(nameof(HourFields))]
    public void Hours_are_finite_within_range_and_have_one_decimal(string field, double min)
    {
        Refused(With(field, double.NaN), Reasons.NumberNotFinite, field, "NaN");
        Refused(With(field, double.PositiveInfinity), Reasons.NumberNotFinite, field, "Infinity");
        Refused(With(field, min - 0.1), Reasons.NumberOutOfRange, field, (min - 0.1).ToString("R"), "200,000");
        Refused(With(field, 200_000.1), Reasons.NumberOutOfRange, field, "200000.1", "200,000");
        Refused(With(field, 812.45), Reasons.TooManyDecimals, field, "812.45", "one decimal");
        Taken(With(field, min));
        Taken(With(field, 200_000.0));
        Taken(With(field, 812.4));
    }

    public static TheoryData<string> RequiredHourFields() =>
    [
        "meter_reading.meter_hours", "meter_change.old_meter_hours", "meter_change.new_meter_hours", "installation.time_in_service_hours",
        "removal.time_in_service_hours", "inspection.time_in_service_hours", "finding.time_in_service_hours", "action.time_in_service_hours",
    ];

    [Theory]
    [MemberData(nameof(RequiredHourFields))]
    public void Absent_hours_are_refused_and_are_not_zero(string field) =>
        Refused(With(field, (object?)null), Reasons.FieldRequired, field, "", "hours");

    public static TheoryData<string> DayFields() =>
    [
        "aircraft.watch_start_date", "meter_reading.reading_date", "meter_change.change_date", "installation.installation_date",
        "removal.removal_date", "inspection.inspection_date", "finding.found_date", "action.action_date",
    ];

    [Theory]
    [MemberData(nameof(DayFields))]
    public void Days_are_given_exist_and_are_within_range(string field)
    {
        Refused(With(field, (object?)null), Reasons.FieldRequired, field, "");
        Refused(With(field, Valid.Day(2026, 0, 0)), Reasons.DateInvalid, field, "2026-00-00");
        Refused(With(field, Valid.Day(2025, 2, 29)), Reasons.DateInvalid, field, "2025-02-29");
        Refused(With(field, Valid.Day(0, 2, 3)), Reasons.DateInvalid, field, "0000-02-03");
        Refused(With(field, Valid.Day(1949, 12, 31)), Reasons.DateOutOfRange, field, "1949-12-31", "1950-01-01");
        // Today is 2026-03-01 here: 366 days ahead is 2027-03-02.
        Refused(With(field, Valid.Day(2027, 3, 3)), Reasons.DateOutOfRange, field, "2027-03-03", "366 days");
        Taken(With(field, Valid.Day(1950, 1, 1)));
        Taken(With(field, Valid.Day(2024, 2, 29)));
        Taken(With(field, Valid.Day(2027, 3, 2)));
    }

    public static TheoryData<string> MarkFields() =>
    [
        "meter_reading.registration", "meter_change.registration", "installation.registration", "removal.registration",
        "inspection.registration", "finding.registration", "action.registration",
    ];

    [Theory]
    [MemberData(nameof(MarkFields))]
    public void The_aircraft_is_registered_whatever_the_case_of_its_mark(string field)
    {
        Refused(With(field, ""), Reasons.FieldRequired, field, "");
        Refused(With(field, "Z"), Reasons.PatternMismatch, field, "Z", "2 to 10");
        Refused(With(field, "ZZ A01"), Reasons.PatternMismatch, field, "ZZ A01");
        Refused(With(field, "ZZ-A0123456"), Reasons.PatternMismatch, field, "ZZ-A0123456");
        Refused(With(field, "ZZ-A\u041e1"), Reasons.PatternMismatch, field, "ZZ-A\u041e1"); // a Cyrillic letter
        Refused(With(field, "ZZ-A02"), Reasons.AircraftNotRegistered, field, "ZZ-A02");
        Taken(With(field, "zz-a01"));
    }

    public static TheoryData<string> LocationFields() =>
        ["installation.location", "removal.location", "finding.location", "action.location", "inspection.looks[0].location"];

    [Theory]
    [MemberData(nameof(LocationFields))]
    public void The_location_is_one_of_the_aircrafts_layout(string field)
    {
        Refused(With(field, ""), Reasons.FieldRequired, field, "");
        Refused(With(field, "exhaust"), Reasons.PatternMismatch, field, "exhaust", "two to four parts");
        Refused(With(field, "Exhaust/cyl-3/gasket"), Reasons.PatternMismatch, field, "Exhaust/cyl-3/gasket");
        Refused(With(field, "exhaust//gasket"), Reasons.PatternMismatch, field, "exhaust//gasket");
        Refused(With(field, "exhaust/cyl-9/gasket"), Reasons.LocationNotInLayout, field, "exhaust/cyl-9/gasket", "ZZ-A01");
    }

    private static void Taken(Record record) =>
        Assert.Empty(Intake.Rules.RecordRules.Parse(record, Valid.Known()).Refusals);

    /// <summary>A valid record whose field at that path holds the value.</summary>
    private static Record With(string path, object? value)
    {
        var parts = path.Split('.');
        var record = Valid.All().Single(r => RecordField(r) == parts[0]);
        // Aircraft dates must stay in order whatever the first of them is.
        if (record.Aircraft is { } aircraft)
            aircraft.RetiredDate = null;
        Google.Protobuf.IMessage message = (Google.Protobuf.IMessage)Record.Descriptor.FindFieldByName(parts[0]).Accessor.GetValue(record);
        foreach (var part in parts[1..^1])
            message = ((Inspection)message).Looks[int.Parse(part[(part.IndexOf('[') + 1)..^1])];
        var accessor = message.Descriptor.FindFieldByName(parts[^1]).Accessor;
        if (value is null)
            accessor.Clear(message);
        else
            accessor.SetValue(message, value);
        return record;
    }

    private static string RecordField(Record record) =>
        Record.Descriptor.Oneofs.Single(o => o.Name == "content").Accessor.GetCaseFieldDescriptor(record).Name;
}

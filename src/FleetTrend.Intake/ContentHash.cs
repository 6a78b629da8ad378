using System.Security.Cryptography;
using FleetTrend.Records;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake;

/// <summary>The fingerprint of a record's content: SHA-256 of an encoding that is defined here and written here, byte by byte. It decides
/// whether a record that comes again is the same one, so it must not change while a database is in use. Two forms that say the same
/// have the same one: absent and default, upper and lower case of a mark, the order of an inspection's lines, a last bit of a double.
/// </summary>
/// <remarks>
/// <para>The encoding is that in which records were hashed from the first version on, so that a database of any version still knows
/// them. No library writes it, and nothing about it depends on one, on the order in which fields arrive, on fields that a caller's newer
/// contract has, or on a culture.</para>
/// <para>Forms. A count is a whole number, seven bits to a byte, the lowest first; the high bit of a byte says that another follows. A
/// field is a count, eight times its number plus its form, and then: form 0, a count; form 1, eight bytes, a binary64 number, the lowest
/// byte first; form 2, the count of the bytes that follow. Fields stand by ascending number.</para>
/// <list type="bullet">
/// <item>Text: form 2, UTF-8. Empty: no field.</item>
/// <item>Mark: a text, in upper case by the invariant culture.</item>
/// <item>Hours: form 1, the nearest tenth. Zero: no field, save where said.</item>
/// <item>Word: form 0, its number in the contract. Not told: no field. Yes or no: form 0, 1 for yes. No: no field.</item>
/// <item>Day: form 2, of the fields 1 year, 2 month, 3 day, each form 0. Absent: no field.</item>
/// </list>
/// <para>Content: one field of form 2 by the number of the kind, which holds these:</para>
/// <list type="bullet">
/// <item>2 aircraft: 1 mark; 2 watch start day; 3 for each assignment, as sent, form 2 of 1 first day, 2 base, 3 type group; 4 meter offset
/// hours; 5 retired day.</item>
/// <item>3 meter reading: 1 mark; 2 day; 3 meter hours.</item>
/// <item>4 meter change: 1 mark; 2 day; 3 old and 4 new meter hours.</item>
/// <item>5 installation: 1 mark; 2 location; 3 day; 4 hours; 5 part hours, zero too, none where unknown; 6 serial number; 7 part number;
/// 8 location code.</item>
/// <item>6 removal: 1 mark; 2 location; 3 day; 4 hours; 5 reason; 6 examined good; 7 serial number; 8 location code.</item>
/// <item>7 inspection: 1 mark; 2 day; 3 hours; 4 occasion; 5 for each line, ordered by location and then by location code as their UTF-16
/// code units order them, form 2 of 1 location, 2 state, 3 method, 4 location code.</item>
/// <item>8 finding: 1 mark; 2 location; 3 day; 4 hours; 5 condition; 6 grade, a defect where not told; 7 size in millimetres, form 1 as
/// sent, none where absent; 8 trace colour; 9 method; 10 same event as; 11 note; 12 location code; 13 condition code.</item>
/// <item>9 action: 1 mark; 2 location; 3 day; 4 hours; 5 kind; 6 part hours, zero too: of a replacement zero where absent, and else as
/// sent, none where absent; 7 note; 8 location code; 9 kind code.</item>
/// <item>10 retraction: 1 reason.</item>
/// <item>11 practice change: 1 day; 2 base; 3 type group; 4 for each line, ordered by location as its UTF-16 code units order it, form 2 of
/// 1 location; 5 part number; 6 what; 7 why.</item>
/// <item>12 stock count: 1 day; 2 base; 3 part number; 4 quantity, a count, none for zero; 5 lead time in days, a count, zero too, none where absent.</item>
/// </list>
/// <para>A field that the contract gains later takes the next number, and is no field where it says nothing.</para>
/// </remarks>
internal static class ContentHash
{
    /// <summary>SHA-256 of the content, the key left out.</summary>
    /// <param name="record">A record that has passed the rules, or that only refers to what is not there.</param>
    public static byte[] Compute(Wire.Record record)
    {
        EncodedFields? content = record.ContentCase switch
        {
            Wire.Record.ContentOneofCase.None => null,
            Wire.Record.ContentOneofCase.Aircraft => Encode(record.Aircraft),
            Wire.Record.ContentOneofCase.MeterReading => Encode(record.MeterReading),
            Wire.Record.ContentOneofCase.MeterChange => Encode(record.MeterChange),
            Wire.Record.ContentOneofCase.Installation => Encode(record.Installation),
            Wire.Record.ContentOneofCase.Removal => Encode(record.Removal),
            Wire.Record.ContentOneofCase.Inspection => Encode(record.Inspection),
            Wire.Record.ContentOneofCase.Finding => Encode(record.Finding),
            Wire.Record.ContentOneofCase.Action => Encode(record.Action),
            Wire.Record.ContentOneofCase.Retraction => new EncodedFields().Text(1, record.Retraction.Reason),
            Wire.Record.ContentOneofCase.PracticeChange => Encode(record.PracticeChange),
            Wire.Record.ContentOneofCase.StockCount => Encode(record.StockCount),
        };
        var fields = new EncodedFields();
        if (content is not null)
            fields.Group(NumberOf(record.ContentCase), content);
        return SHA256.HashData(fields.ToArray());
    }

    private static uint NumberOf(Wire.Record.ContentOneofCase kind) => kind switch
    {
        Wire.Record.ContentOneofCase.None => 0,
        Wire.Record.ContentOneofCase.Aircraft => 2,
        Wire.Record.ContentOneofCase.MeterReading => 3,
        Wire.Record.ContentOneofCase.MeterChange => 4,
        Wire.Record.ContentOneofCase.Installation => 5,
        Wire.Record.ContentOneofCase.Removal => 6,
        Wire.Record.ContentOneofCase.Inspection => 7,
        Wire.Record.ContentOneofCase.Finding => 8,
        Wire.Record.ContentOneofCase.Action => 9,
        Wire.Record.ContentOneofCase.Retraction => 10,
        Wire.Record.ContentOneofCase.PracticeChange => 11,
        Wire.Record.ContentOneofCase.StockCount => 12,
    };

    private static EncodedFields Encode(Wire.Aircraft aircraft)
    {
        var fields = new EncodedFields().Text(1, Mark(aircraft.Registration)).Day(2, aircraft.WatchStartDate);
        foreach (var line in aircraft.Assignments)
            fields.Group(3, new EncodedFields().Day(1, line.FromDate).Text(2, line.Base).Text(3, line.TypeGroup));
        return fields.NumberUnlessZero(4, Tenths(aircraft.MeterOffsetHours)).Day(5, aircraft.RetiredDate);
    }

    private static EncodedFields Encode(Wire.MeterReading reading) => new EncodedFields()
        .Text(1, Mark(reading.Registration)).Day(2, reading.ReadingDate).NumberUnlessZero(3, Tenths(reading.MeterHours));

    private static EncodedFields Encode(Wire.MeterChange change) => new EncodedFields()
        .Text(1, Mark(change.Registration)).Day(2, change.ChangeDate)
        .NumberUnlessZero(3, Tenths(change.OldMeterHours)).NumberUnlessZero(4, Tenths(change.NewMeterHours));

    private static EncodedFields Encode(Wire.Installation installation)
    {
        var fields = new EncodedFields().Text(1, Mark(installation.Registration)).Text(2, installation.Location)
            .Day(3, installation.InstallationDate).NumberUnlessZero(4, Tenths(installation.TimeInServiceHours));
        if (installation.HasPartHours)
            fields.Number(5, Tenths(installation.PartHours));
        return fields.Text(6, installation.SerialNumber).Text(7, installation.PartNumber).Text(8, installation.LocationCode);
    }

    private static EncodedFields Encode(Wire.Removal removal) => new EncodedFields()
        .Text(1, Mark(removal.Registration)).Text(2, removal.Location).Day(3, removal.RemovalDate)
        .NumberUnlessZero(4, Tenths(removal.TimeInServiceHours)).Word(5, removal.Reason).Truth(6, removal.ExaminedGood)
        .Text(7, removal.SerialNumber).Text(8, removal.LocationCode);

    private static EncodedFields Encode(Wire.Inspection inspection)
    {
        var fields = new EncodedFields().Text(1, Mark(inspection.Registration)).Day(2, inspection.InspectionDate)
            .NumberUnlessZero(3, Tenths(inspection.TimeInServiceHours)).Word(4, inspection.Occasion);
        var looks = inspection.Looks
            .OrderBy(look => look.Location, StringComparer.Ordinal)
            .ThenBy(look => look.LocationCode, StringComparer.Ordinal);
        foreach (var look in looks)
        {
            fields.Group(
                5, new EncodedFields().Text(1, look.Location).Word(2, look.State).Word(3, look.Method).Text(4, look.LocationCode));
        }

        return fields;
    }

    private static EncodedFields Encode(Wire.Finding finding)
    {
        var grade = finding.Grade == Wire.FindingGrade.Unspecified ? Wire.FindingGrade.Defect : finding.Grade;
        var fields = new EncodedFields().Text(1, Mark(finding.Registration)).Text(2, finding.Location).Day(3, finding.FoundDate)
            .NumberUnlessZero(4, Tenths(finding.TimeInServiceHours)).Word(5, finding.Condition).Word(6, grade);
        if (finding.HasSizeMm)
            fields.Number(7, finding.SizeMm);
        return fields.Word(8, finding.TraceColour).Word(9, finding.Method).Text(10, finding.SameEventAs).Text(11, finding.Note)
            .Text(12, finding.LocationCode).Text(13, finding.ConditionCode);
    }

    private static EncodedFields Encode(Wire.Action action)
    {
        var fields = new EncodedFields().Text(1, Mark(action.Registration)).Text(2, action.Location).Day(3, action.ActionDate)
            .NumberUnlessZero(4, Tenths(action.TimeInServiceHours)).Word(5, action.Kind);
        if (action.Kind == Wire.ActionKind.Replaced)
            fields.Number(6, action.HasPartHours ? Tenths(action.PartHours) : 0);
        else if (action.HasPartHours)
            fields.Number(6, action.PartHours); // a code stands in place of the kind, and may come to mean another
        return fields.Text(7, action.Note).Text(8, action.LocationCode).Text(9, action.KindCode);
    }

    private static EncodedFields Encode(Wire.PracticeChange change)
    {
        var fields = new EncodedFields().Day(1, change.ChangeDate).Text(2, change.Base).Text(3, change.TypeGroup);
        foreach (var line in change.Locations.OrderBy(line => line.Location, StringComparer.Ordinal))
            fields.Group(4, new EncodedFields().Text(1, line.Location));
        return fields.Text(5, change.PartNumber).Text(6, change.What).Text(7, change.Why);
    }

    private static EncodedFields Encode(Wire.StockCount count)
    {
        var fields = new EncodedFields().Day(1, count.CountDate).Text(2, count.Base).Text(3, count.PartNumber);
        if (count.Quantity > 0)
            fields.Whole(4, count.Quantity);
        if (count.HasLeadTimeDays)
            fields.Whole(5, count.LeadTimeDays);
        return fields;
    }

    private static string Mark(string registration) => registration.ToUpperInvariant();

    private static double Tenths(double hours) => Hours.From(hours).Value;
}

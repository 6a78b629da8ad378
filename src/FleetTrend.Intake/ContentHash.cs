using System.Security.Cryptography;
using FleetTrend.Records;
using Google.Protobuf;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake;

/// <summary>The fingerprint of a record's content. Two forms that say the same have the same one: absent and default,
/// upper and lower case of a mark, the order of an inspection's lines, a last bit of a double.</summary>
internal static class ContentHash
{
    // Fields that a later contract adds are not stored here, so they make no other content.
    private static readonly MessageParser<Wire.Record> Known = Wire.Record.Parser.WithDiscardUnknownFields(true);

    /// <summary>SHA-256 of the content, the key left out.</summary>
    /// <param name="record">A record that has passed the rules.</param>
    public static byte[] Compute(Wire.Record record)
    {
        var copy = Known.ParseFrom(record.ToByteString());
        copy.Key = null;
        Normalise(copy);
        return SHA256.HashData(copy.ToByteArray());
    }

    private static void Normalise(Wire.Record record)
    {
        switch (record.ContentCase)
        {
            case Wire.Record.ContentOneofCase.Aircraft:
                record.Aircraft.Registration = Mark(record.Aircraft.Registration);
                record.Aircraft.MeterOffsetHours = Tenths(record.Aircraft.MeterOffsetHours);
                break;
            case Wire.Record.ContentOneofCase.MeterReading:
                Normalise(record.MeterReading);
                break;
            case Wire.Record.ContentOneofCase.MeterChange:
                Normalise(record.MeterChange);
                break;
            case Wire.Record.ContentOneofCase.Installation:
                Normalise(record.Installation);
                break;
            case Wire.Record.ContentOneofCase.Removal:
                Normalise(record.Removal);
                break;
            case Wire.Record.ContentOneofCase.Inspection:
                Normalise(record.Inspection);
                break;
            case Wire.Record.ContentOneofCase.Finding:
                Normalise(record.Finding);
                break;
            case Wire.Record.ContentOneofCase.Action:
                Normalise(record.Action);
                break;
        }
    }

    // Required hours had no presence at first, so 0 was not written. It still is not: what was stored then is the same when it comes again.
    private static void Normalise(Wire.MeterReading reading)
    {
        reading.Registration = Mark(reading.Registration);
        reading.MeterHours = Tenths(reading.MeterHours);
        if (reading.MeterHours == 0)
            reading.ClearMeterHours();
    }

    private static void Normalise(Wire.MeterChange change)
    {
        change.Registration = Mark(change.Registration);
        change.OldMeterHours = Tenths(change.OldMeterHours);
        change.NewMeterHours = Tenths(change.NewMeterHours);
        if (change.OldMeterHours == 0)
            change.ClearOldMeterHours();
        if (change.NewMeterHours == 0)
            change.ClearNewMeterHours();
    }

    private static void Normalise(Wire.Installation installation)
    {
        installation.Registration = Mark(installation.Registration);
        installation.TimeInServiceHours = Tenths(installation.TimeInServiceHours);
        if (installation.TimeInServiceHours == 0)
            installation.ClearTimeInServiceHours();
        if (installation.HasPartHours)
            installation.PartHours = Tenths(installation.PartHours);
    }

    private static void Normalise(Wire.Removal removal)
    {
        removal.Registration = Mark(removal.Registration);
        removal.TimeInServiceHours = Tenths(removal.TimeInServiceHours);
        if (removal.TimeInServiceHours == 0)
            removal.ClearTimeInServiceHours();
    }

    private static void Normalise(Wire.Inspection inspection)
    {
        inspection.Registration = Mark(inspection.Registration);
        inspection.TimeInServiceHours = Tenths(inspection.TimeInServiceHours);
        if (inspection.TimeInServiceHours == 0)
            inspection.ClearTimeInServiceHours();
        var sorted = inspection.Looks.OrderBy(l => l.Location, StringComparer.Ordinal).ThenBy(l => l.LocationCode, StringComparer.Ordinal).ToList();
        inspection.Looks.Clear();
        inspection.Looks.AddRange(sorted);
    }

    private static void Normalise(Wire.Finding finding)
    {
        finding.Registration = Mark(finding.Registration);
        finding.TimeInServiceHours = Tenths(finding.TimeInServiceHours);
        if (finding.TimeInServiceHours == 0)
            finding.ClearTimeInServiceHours();
        if (finding.Grade == Wire.FindingGrade.Unspecified)
            finding.Grade = Wire.FindingGrade.Defect;
    }

    private static void Normalise(Wire.Action action)
    {
        action.Registration = Mark(action.Registration);
        action.TimeInServiceHours = Tenths(action.TimeInServiceHours);
        if (action.TimeInServiceHours == 0)
            action.ClearTimeInServiceHours();
        if (action.Kind == Wire.ActionKind.Replaced)
            action.PartHours = action.HasPartHours ? Tenths(action.PartHours) : 0;
    }

    private static string Mark(string registration) => registration.ToUpperInvariant();

    private static double Tenths(double hours) => Hours.From(hours).Value;
}

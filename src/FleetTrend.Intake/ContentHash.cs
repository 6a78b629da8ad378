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
    public static byte[] Of(Wire.Record record)
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
                record.MeterReading.Registration = Mark(record.MeterReading.Registration);
                record.MeterReading.MeterHours = Tenths(record.MeterReading.MeterHours);
                break;
            case Wire.Record.ContentOneofCase.MeterChange:
                record.MeterChange.Registration = Mark(record.MeterChange.Registration);
                record.MeterChange.OldMeterHours = Tenths(record.MeterChange.OldMeterHours);
                record.MeterChange.NewMeterHours = Tenths(record.MeterChange.NewMeterHours);
                break;
            case Wire.Record.ContentOneofCase.Installation:
                record.Installation.Registration = Mark(record.Installation.Registration);
                record.Installation.TimeInServiceHours = Tenths(record.Installation.TimeInServiceHours);
                if (record.Installation.HasPartHours)
                    record.Installation.PartHours = Tenths(record.Installation.PartHours);
                break;
            case Wire.Record.ContentOneofCase.Removal:
                record.Removal.Registration = Mark(record.Removal.Registration);
                record.Removal.TimeInServiceHours = Tenths(record.Removal.TimeInServiceHours);
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

    private static void Normalise(Wire.Inspection inspection)
    {
        inspection.Registration = Mark(inspection.Registration);
        inspection.TimeInServiceHours = Tenths(inspection.TimeInServiceHours);
        var sorted = inspection.Looks.OrderBy(l => l.Location, StringComparer.Ordinal).ThenBy(l => l.LocationCode, StringComparer.Ordinal).ToList();
        inspection.Looks.Clear();
        inspection.Looks.AddRange(sorted);
    }

    private static void Normalise(Wire.Finding finding)
    {
        finding.Registration = Mark(finding.Registration);
        finding.TimeInServiceHours = Tenths(finding.TimeInServiceHours);
        if (finding.Grade == Wire.FindingGrade.Unspecified)
            finding.Grade = Wire.FindingGrade.Defect;
    }

    private static void Normalise(Wire.Action action)
    {
        action.Registration = Mark(action.Registration);
        action.TimeInServiceHours = Tenths(action.TimeInServiceHours);
        if (action.Kind == Wire.ActionKind.Replaced)
            action.PartHours = action.HasPartHours ? Tenths(action.PartHours) : 0;
    }

    private static string Mark(string registration) => registration.ToUpperInvariant();

    private static double Tenths(double hours) => Hours.From(hours).Value;
}

using System.Globalization;
using FleetTrend.Records;
using FleetTrend.Records.Sources;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>The envelope: a key, and exactly one kind of content.</summary>
internal static class RecordRules
{
    /// <summary>Most characters of a source record identifier.</summary>
    public const int MaxIdLength = 120;

    private const int MaxReasonLength = 2_000;

    /// <summary>A wire record as a record of the domain, or every rule that it breaks.</summary>
    public static ParsedRecord Parse(Wire.Record? record, ReferenceData known)
    {
        var reader = new FieldReader(known.Today);
        record ??= new Wire.Record();
        var bytes = record.CalculateSize();
        if (bytes > RecordIntake.MaxRecordBytes)
        {
            reader.RefuseBare("", bytes.ToString(CultureInfo.InvariantCulture), Reasons.RecordTooLarge, "must be a record of up to 262,144 bytes");
            return new ParsedRecord(new RecordKey("", "", 1), null, reader.Refusals);
        }

        var key = ReadKey(record.Key, reader, known);
        RecordContent? content = record.ContentCase switch
        {
            Wire.Record.ContentOneofCase.Aircraft => AircraftRules.Parse(record.Aircraft, reader.At("aircraft"), known),
            Wire.Record.ContentOneofCase.MeterReading => ReadingRules.Parse(record.MeterReading, reader.At("meter_reading"), known),
            Wire.Record.ContentOneofCase.MeterChange => ReadingRules.Parse(record.MeterChange, reader.At("meter_change"), known),
            Wire.Record.ContentOneofCase.Installation => InstallationRules.Parse(record.Installation, key, reader.At("installation"), known),
            Wire.Record.ContentOneofCase.Removal => InstallationRules.Parse(record.Removal, key, reader.At("removal"), known),
            Wire.Record.ContentOneofCase.Inspection => InspectionRules.Parse(record.Inspection, key, reader.At("inspection"), known),
            Wire.Record.ContentOneofCase.Finding => FindingRules.Parse(record.Finding, key, reader.At("finding"), known),
            Wire.Record.ContentOneofCase.Action => ActionRules.Parse(record.Action, key, reader.At("action"), known),
            Wire.Record.ContentOneofCase.Retraction => ParseRetraction(record.Retraction, key, reader),
            Wire.Record.ContentOneofCase.PracticeChange => PracticeRules.Parse(record.PracticeChange, reader.At("practice_change"), known),
            Wire.Record.ContentOneofCase.StockCount => StockRules.Parse(record.StockCount, reader.At("stock_count"), known),
            Wire.Record.ContentOneofCase.None => null,
        };
        if (content is null)
            reader.Refuse("content", "", Reasons.FieldRequired, "must be exactly one of aircraft, meter_reading, meter_change, installation, removal, inspection, finding, action, practice_change, stock_count and retraction");
        return new ParsedRecord(key, reader.Refusals.Count == 0 ? content : null, reader.Refusals);
    }

    private static RecordKey ReadKey(Wire.RecordKey? key, FieldReader record, ReferenceData known)
    {
        if (key is null)
        {
            record.Refuse("key", "", Reasons.FieldRequired, "must be a key with source and source_record_id");
            return new RecordKey("", "", 1);
        }

        var reader = record.At("key");
        var broken = reader.Refusals.Count;
        var source = reader.Name("source", key.Source, Patterns.Source, Patterns.SourceRule);
        if (reader.Refusals.Count == broken && known.OwnSource is { } own && source != own)
            reader.Refuse("source", source, Reasons.SourceNotYours, "must be the source that the key belongs to");
        else if (reader.Refusals.Count == broken && !known.Sources.Contains(source))
            reader.Refuse("source", source, Reasons.SourceNotRegistered, "must be a registered source");
        var id = reader.Line("source_record_id", key.SourceRecordId, 1, MaxIdLength);
        if (key.Revision < 0)
            reader.RefuseBare("revision", key.Revision.ToString(CultureInfo.InvariantCulture), Reasons.NumberOutOfRange, "must be 1 or more, where 0 is read as 1");
        return new RecordKey(source, id, Math.Max(1, key.Revision));
    }

    private static Retraction ParseRetraction(Wire.Retraction retraction, RecordKey key, FieldReader record)
    {
        if (key.Revision < 2)
        {
            record.At("key").RefuseBare("revision", key.Revision.ToString(CultureInfo.InvariantCulture), Reasons.NumberOutOfRange,
                "must be 2 or more: a retraction has a revision above the one that it takes back");
        }

        return new Retraction(record.At("retraction").Note("reason", retraction.Reason, MaxReasonLength) ?? "");
    }
}

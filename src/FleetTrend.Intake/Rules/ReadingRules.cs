using FleetTrend.Records.Readings;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of meter readings and meter changes.</summary>
internal static class ReadingRules
{
    public static MeterReading Parse(Wire.MeterReading reading, FieldReader reader, ReferenceData known) => new(
        PlaceRules.Registration(reader, reading.Registration, known),
        reader.Day("reading_date", reading.ReadingDate),
        reader.Hours("meter_hours", reading.HasMeterHours, reading.MeterHours));

    public static MeterChange Parse(Wire.MeterChange change, FieldReader reader, ReferenceData known) => new(
        PlaceRules.Registration(reader, change.Registration, known),
        reader.Day("change_date", change.ChangeDate),
        reader.Hours("old_meter_hours", change.HasOldMeterHours, change.OldMeterHours),
        reader.Hours("new_meter_hours", change.HasNewMeterHours, change.NewMeterHours));
}

using FleetTrend.Records.Installations;
using FleetTrend.Records.Sources;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of parts that go in and come out.</summary>
internal static class InstallationRules
{
    private const int MaxSerialLength = 60;
    private const int MaxPartNumberLength = 120;

    public static Installation Parse(Wire.Installation installation, RecordKey key, FieldReader reader, ReferenceData known)
    {
        var registration = PlaceRules.Registration(reader, installation.Registration, known);
        var location = PlaceRules.Path(reader, installation.Location, installation.LocationCode, key, known);
        PlaceRules.Location(reader, location, registration, known);
        return new Installation
        {
            Registration = registration,
            Location = location,
            InstallationDate = reader.Day("installation_date", installation.InstallationDate),
            TimeInService = reader.Hours("time_in_service_hours", installation.HasTimeInServiceHours, installation.TimeInServiceHours),
            PartHours = installation.HasPartHours ? reader.Hours("part_hours", given: true, installation.PartHours) : null,
            SerialNumber = OptionalLine(reader, "serial_number", installation.SerialNumber, MaxSerialLength),
            PartNumber = OptionalLine(reader, "part_number", installation.PartNumber, MaxPartNumberLength),
        };
    }

    public static Removal Parse(Wire.Removal removal, RecordKey key, FieldReader reader, ReferenceData known)
    {
        var registration = PlaceRules.Registration(reader, removal.Registration, known);
        var location = PlaceRules.Path(reader, removal.Location, removal.LocationCode, key, known);
        PlaceRules.Location(reader, location, registration, known);
        var reason = reader.Choice<Wire.RemovalReason, RemovalReason>("reason", removal.Reason);
        if (reason is RemovalReason.Failed && removal.ExaminedGood)
            reader.RefuseBare("examined_good", "true", Reasons.FieldNotAllowed, "must be false where the reason is REMOVAL_REASON_FAILED");
        return new Removal
        {
            Registration = registration,
            Location = location,
            RemovalDate = reader.Day("removal_date", removal.RemovalDate),
            TimeInService = reader.Hours("time_in_service_hours", removal.HasTimeInServiceHours, removal.TimeInServiceHours),
            Reason = reason,
            ExaminedGood = removal.ExaminedGood,
            SerialNumber = OptionalLine(reader, "serial_number", removal.SerialNumber, MaxSerialLength),
        };
    }

    private static string? OptionalLine(FieldReader reader, string field, string value, int max)
    {
        reader.Line(field, value, 0, max);
        return value.Length == 0 ? null : value;
    }
}

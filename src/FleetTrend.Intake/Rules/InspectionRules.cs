using FleetTrend.Records.Inspections;
using FleetTrend.Records.Sources;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Rules;

/// <summary>Rules of inspections.</summary>
internal static class InspectionRules
{
    private const int MaxLooks = 500;

    public static Inspection Parse(Wire.Inspection inspection, RecordKey key, FieldReader reader, ReferenceData known)
    {
        var registration = PlaceRules.Registration(reader, inspection.Registration, known);
        return new Inspection
        {
            Registration = registration,
            InspectionDate = reader.Day("inspection_date", inspection.InspectionDate),
            TimeInService = reader.Hours("time_in_service_hours", inspection.HasTimeInServiceHours, inspection.TimeInServiceHours),
            Occasion = reader.Choice<Wire.Occasion, Occasion>("occasion", inspection.Occasion),
            Looks = ReadLooks(inspection, registration, key, reader, known),
        };
    }

    private static List<LocationLook> ReadLooks(
        Wire.Inspection inspection, string registration, RecordKey key, FieldReader reader, ReferenceData known)
    {
        var looks = new List<LocationLook>(Math.Min(inspection.Looks.Count, MaxLooks));
        if (inspection.Looks.Count > MaxLooks)
        {
            reader.RefuseBare("looks", $"{inspection.Looks.Count}", Reasons.TooManyItems, "must be a list of up to 500 lines");
            return looks;
        }

        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (index, wire) in inspection.Looks.Index())
        {
            var line = reader.At($"looks[{index}]");
            var path = PlaceRules.Path(line, wire.Location, wire.LocationCode, key, known);
            PlaceRules.Location(line, path, registration, known);
            if (path.Length > 0 && !seen.Add(path))
                line.Refuse("location", path, Reasons.DuplicateLine, "must be a location that no other line of the inspection has");
            looks.Add(new LocationLook(
                path,
                line.Choice<Wire.LookState, LookState>("state", wire.State),
                line.Choice<Wire.LookMethod, LookMethod>("method", wire.Method, LookMethod.Unspecified)));
        }

        return looks;
    }
}

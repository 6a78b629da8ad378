using FleetTrend.Records.Layouts;
using FleetTrend.Records.Sources;

namespace FleetTrend.Intake.Rules;

/// <summary>The aircraft and the location that a record is about.</summary>
internal static class PlaceRules
{
    /// <summary>A registration mark in upper case, of a registered aircraft.</summary>
    public static string Registration(FieldReader reader, string value, ReferenceData known)
    {
        var registration = Mark(reader, value);
        if (registration.Length > 0 && !known.HasAircraft(registration))
            reader.Refuse("registration", registration, Reasons.AircraftNotRegistered, "must be a registered aircraft");
        return registration;
    }

    /// <summary>A registration mark in upper case, whether or not the aircraft is registered; empty where it is no mark.</summary>
    public static string Mark(FieldReader reader, string value)
    {
        var broken = reader.Refusals.Count;
        reader.Name("registration", value, Patterns.Registration, Patterns.RegistrationRule);
        return reader.Refusals.Count == broken ? value.ToUpperInvariant() : "";
    }

    /// <summary>The path of a location, told by itself or by a code of the source; empty where refused.</summary>
    public static string Path(FieldReader reader, string path, string code, RecordKey key, ReferenceData known)
    {
        if (code.Length > 0)
        {
            var named = new SourceCode(key.Source, CodeKind.Location, code);
            return CodeRules.Read(reader, "location_code", named, ("location", path.Length > 0), known) is CodeMeaning.Location location ? location.Path : "";
        }

        var broken = reader.Refusals.Count;
        reader.Name("location", path, Patterns.Path, Patterns.PathRule);
        return reader.Refusals.Count > broken ? "" : path;
    }

    /// <summary>A location that a layout of the aircraft has; null where refused, or where the aircraft is not known.</summary>
    /// <param name="reader">Of the message.</param>
    /// <param name="path">From <see cref="Path"/>.</param>
    /// <param name="registration">From <see cref="Registration"/>.</param>
    /// <param name="known">What is known.</param>
    public static Location? Location(FieldReader reader, string path, string registration, ReferenceData known)
    {
        if (path.Length == 0 || !known.HasAircraft(registration))
            return null;
        var location = known.FindLocation(registration, path);
        if (location is null)
        {
            reader.Refuse(
                "location", path, Reasons.LocationNotInLayout, $"must be a location that {registration} has by the layout of its type group",
                NearestName.Find(path, known.PathsOf(registration)));
        }

        return location;
    }
}

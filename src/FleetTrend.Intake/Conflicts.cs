using System.Globalization;
using FleetTrend.Store.Histories;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake;

/// <summary>What the store found against a record that had passed the rules, in the words of a refusal.</summary>
internal static class Conflicts
{
    public static Refusal Explain(SaveResult.Conflict conflict, Wire.Record record) => conflict.Reason switch
    {
        SaveConflict.RevisionReused => new(
            "key.revision", Math.Max(1, record.Key.Revision).ToString(CultureInfo.InvariantCulture), Reasons.RevisionReused,
            "must be a higher revision: this one was accepted with other content")
        { IsBare = true },
        SaveConflict.SourceUnknown => new("key.source", conflict.Value, Reasons.SourceNotRegistered, "must be a registered source"),
        SaveConflict.AircraftUnknown => new(
            $"{FieldOf(record)}.registration", conflict.Value, Reasons.AircraftNotRegistered, "must be a registered aircraft"),
        SaveConflict.LocationUnknown => new(
            $"{FieldOf(record)}.location", conflict.Value, Reasons.LocationNotInLayout, "must be a location of a layout"),
        SaveConflict.TypeGroupUnknown => new(
            "aircraft.assignments", conflict.Value, Reasons.TypeGroupNotRegistered, "must be a registered type group"),
        _ => throw new ArgumentOutOfRangeException(nameof(conflict), conflict, "Not a kind of conflict."),
    };

    /// <summary>The field of the content; a record without one never comes to the store.</summary>
    private static string FieldOf(Wire.Record record) =>
        Wire.Record.Descriptor.FindFieldByNumber((int)record.ContentCase).Name;
}

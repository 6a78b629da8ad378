using Google.Protobuf.Reflection;

namespace FleetTrend.Cli.RecordFiles;

/// <summary>One column of a file.</summary>
/// <param name="Name">Its header: the name of the field in the contract, but for the few that the file form adds.</param>
/// <param name="Field">The field it fills; null for one that the file form adds.</param>
internal sealed record Column(string Name, FieldDescriptor? Field)
{
    // Aircraft.meter_offset_hours is 0 for a meter that has counted from new; every other number has no value to fall back on.
    private const string MayBeZero = "meter_offset_hours";

    /// <summary>True for a number that an empty cell would turn into 0 without a word.</summary>
    public bool MustBeGiven => Field is { FieldType: FieldType.Double, HasPresence: false } && Name != MayBeZero;
}

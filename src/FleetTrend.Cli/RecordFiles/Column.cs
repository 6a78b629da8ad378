using Google.Protobuf.Reflection;

namespace FleetTrend.Cli.RecordFiles;

/// <summary>One column of a file.</summary>
/// <param name="Name">Its header: the name of the field in the contract, but for the few that the file form adds.</param>
/// <param name="Field">The field it fills; null for one that the file form adds.</param>
internal sealed record Column(string Name, FieldDescriptor? Field)
{
    // What absent means is written beside each in the contract; every other number of hours is refused when it is absent.
    private static readonly string[] MayBeEmpty = ["meter_offset_hours", "part_hours", "size_mm"];

    /// <summary>True for a number that must be there: absent is not 0.</summary>
    public bool MustBeGiven => Field is { FieldType: FieldType.Double } && !MayBeEmpty.Contains(Name, StringComparer.Ordinal);
}

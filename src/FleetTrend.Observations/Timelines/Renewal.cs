using FleetTrend.Records;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Timelines;

/// <summary>Another part at a location, by an installation or by a replacement; an installation of the same day says more and wins.</summary>
/// <param name="IsInstallation">True where an installation is recorded, false where only a replacement is.</param>
/// <param name="PartHours">Hours already on the part, or null where unknown.</param>
/// <param name="SerialNumber">Serial number, or null.</param>
/// <param name="PartNumber">Part number, or null where it is not told.</param>
/// <param name="Keys">The records behind it, that of the removal which gave the hours of a serial number among them.</param>
internal sealed record Renewal(bool IsInstallation, Hours? PartHours, string? SerialNumber, string? PartNumber, IReadOnlyList<RecordKey> Keys);

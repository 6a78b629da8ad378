using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Timelines;

/// <summary>An installation over a part of which no removal is recorded.</summary>
/// <param name="Date">Its day.</param>
/// <param name="Location">Where.</param>
/// <param name="Keys">The records of the installation, one of the source that recorded it first.</param>
internal sealed record InstallationOverPart(DateOnly Date, string Location, IReadOnlyList<RecordKey> Keys);

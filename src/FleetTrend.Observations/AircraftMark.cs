using FleetTrend.Records.Sources;

namespace FleetTrend.Observations;

/// <summary>The mark of an aircraft, to be compared with the others of the fleet.</summary>
/// <param name="Registration">Registration mark.</param>
/// <param name="WatchStartDate">The day from which its records are complete.</param>
/// <param name="DescribedBy">The records that describe it.</param>
public sealed record AircraftMark(string Registration, DateOnly WatchStartDate, IReadOnlyList<RecordKey> DescribedBy);

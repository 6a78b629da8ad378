using FleetTrend.Records;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Looks;

/// <summary>A day on which an inspection examined at least one location of an aircraft.</summary>
/// <param name="Date">The day.</param>
/// <param name="Hours">Time in service then.</param>
/// <param name="Evidence">The inspections of that day.</param>
public sealed record Visit(DateOnly Date, Hours Hours, IReadOnlyList<RecordKey> Evidence);

using FleetTrend.Records;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Timelines;

/// <summary>Hours that a part with a serial number brought along from where it came out.</summary>
/// <param name="Hours">Hours on the part when it came out.</param>
/// <param name="From">The record by which it came out.</param>
internal sealed record CarriedHours(Hours Hours, RecordKey From);

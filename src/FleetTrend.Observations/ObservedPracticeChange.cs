using FleetTrend.Records.Practices;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations;

/// <summary>A practice change as it stands.</summary>
/// <param name="Key">The record that tells of it.</param>
/// <param name="Change">What changed, where and when.</param>
public sealed record ObservedPracticeChange(RecordKey Key, PracticeChange Change);

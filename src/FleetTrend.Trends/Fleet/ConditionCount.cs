using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Fleet;

/// <summary>How many events of a condition an aircraft ever had, those that a first look found among them.</summary>
/// <param name="Condition">The condition.</param>
/// <param name="Count">The events.</param>
public sealed record ConditionCount(Condition Condition, int Count);

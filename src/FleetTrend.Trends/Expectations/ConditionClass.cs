using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Expectations;

/// <summary>Findings that are watched together: a condition that comes at a rate, or the failures of one kind of part.</summary>
/// <param name="Condition">The condition; null for failures of parts.</param>
/// <param name="Kind">The kind of part; null for a condition that comes at a rate.</param>
public sealed record ConditionClass(Condition? Condition, string? Kind);

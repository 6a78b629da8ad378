using FleetTrend.Records.Findings;

namespace FleetTrend.Trends.Quiet;

/// <summary>What one class of condition adds over all the time.</summary>
/// <param name="Condition">The condition; null where failures of a kind of part are counted.</param>
/// <param name="Kind">The kind of part; null where a condition is counted.</param>
/// <param name="Found">Findings.</param>
/// <param name="Expected">Findings that the others' rates or lives give for the same looks.</param>
public sealed record QuietClass(Condition? Condition, string? Kind, int Found, double Expected);

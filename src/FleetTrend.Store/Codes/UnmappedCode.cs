using FleetTrend.Records.Sources;

namespace FleetTrend.Store.Codes;

/// <summary>A code without a meaning that records wait for.</summary>
/// <param name="Code">The code.</param>
/// <param name="WaitingCount">Records that wait for it.</param>
/// <param name="SinceTime">Since when the first of them waits (UTC).</param>
public sealed record UnmappedCode(SourceCode Code, int WaitingCount, DateTimeOffset SinceTime);

using FleetTrend.Records.Sources;

namespace FleetTrend.Store.Codes;

/// <summary>A code that has a meaning.</summary>
/// <param name="Code">The code.</param>
/// <param name="Meaning">What it means now.</param>
/// <param name="SetTime">Since when it means this (UTC).</param>
public sealed record KnownCode(SourceCode Code, CodeMeaning Meaning, DateTimeOffset SetTime);

namespace FleetTrend.Records.Flags;

/// <summary>One step of the life of a flag.</summary>
/// <param name="FlagId">The flag.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="RaiseTime">When it was raised (UTC).</param>
/// <param name="State">Where the step took it.</param>
/// <param name="StepTime">When (UTC).</param>
public sealed record FlagStep(long FlagId, string Subject, DateTimeOffset RaiseTime, FlagState State, DateTimeOffset StepTime);

namespace FleetTrend.Store.Flags;

/// <summary>What became of an answer, and the flag as it is then.</summary>
/// <param name="State">What became of it.</param>
/// <param name="Flag">The flag.</param>
public sealed record AnsweredFlag(AnswerState State, StoredFlag Flag);

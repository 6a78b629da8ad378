namespace FleetTrend.Cli.Demo;

/// <summary>What became of pushed records.</summary>
/// <param name="Accepted">Stored.</param>
/// <param name="Unchanged">There already.</param>
/// <param name="Refusals">Refused: identifier and why.</param>
/// <param name="Elapsed">From the first record to the last acknowledgement.</param>
internal sealed record PushCount(int Accepted, int Unchanged, IReadOnlyList<string> Refusals, TimeSpan Elapsed);

using FleetTrend.Contracts.V1;

namespace FleetTrend.Client;

/// <summary>One record with its outcome.</summary>
/// <param name="Index">Its place among the records given to the push, from 0.</param>
/// <param name="Record">The record as given.</param>
/// <param name="Outcome">What became of it; a refusal is an outcome, no exception.</param>
public sealed record PushedRecord(long Index, Record Record, RecordOutcome Outcome);

namespace FleetTrend.Store.DataProblems;

/// <summary>Which data problems are asked for; null for any.</summary>
/// <param name="State">State.</param>
/// <param name="Kind">Name of the kind of problem.</param>
/// <param name="Registration">An aircraft, as the one or the other of those concerned.</param>
public sealed record DataProblemFilter(DataProblemState? State = null, string? Kind = null, string? Registration = null);

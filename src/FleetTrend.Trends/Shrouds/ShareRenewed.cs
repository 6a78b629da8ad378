namespace FleetTrend.Trends.Shrouds;

/// <summary>How many shrouds were renewed some flight hours after their first stop drill.</summary>
/// <param name="Hours">Flight hours since the first stop drill.</param>
/// <param name="Renewed">Shrouds renewed not later.</param>
/// <param name="InService">Shrouds still in service then.</param>
/// <param name="Share">Share renewed by then.</param>
public sealed record ShareRenewed(double Hours, int Renewed, int InService, Figure Share);

namespace FleetTrend.Trends.Repairs;

/// <summary>Of the repairs that were watched for some flight hours since, those known to have come back by then.</summary>
/// <param name="WithinHours">The flight hours.</param>
/// <param name="LongerBack">Come back, of the action that holds longer.</param>
/// <param name="LongerOf">Repairs of that action.</param>
/// <param name="ShorterBack">Come back, of the other.</param>
/// <param name="ShorterOf">Repairs of the other.</param>
public sealed record RepairCounts(double WithinHours, int LongerBack, int LongerOf, int ShorterBack, int ShorterOf);

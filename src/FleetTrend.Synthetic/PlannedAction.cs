namespace FleetTrend.Synthetic;

/// <summary>What the shop does about a flag, on a day in the middle of the records.</summary>
/// <param name="Registration">The flagged aircraft.</param>
/// <param name="ActionDate">The day.</param>
/// <param name="What">What is done.</param>
/// <param name="RecordsBefore">How many of the fleet's records are of earlier days, or of the day itself.</param>
public sealed record PlannedAction(string Registration, DateOnly ActionDate, string What, int RecordsBefore);

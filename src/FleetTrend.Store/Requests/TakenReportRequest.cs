namespace FleetTrend.Store.Requests;

/// <summary>A report that somebody asked for.</summary>
/// <param name="RequestId">The caller's identifier.</param>
/// <param name="PeriodStart">First day of the period.</param>
/// <param name="PeriodEnd">Last day of the period.</param>
public sealed record TakenReportRequest(string RequestId, DateOnly PeriodStart, DateOnly PeriodEnd);

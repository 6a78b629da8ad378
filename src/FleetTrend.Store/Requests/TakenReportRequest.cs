namespace FleetTrend.Store.Requests;

/// <summary>A report that somebody asked for.</summary>
/// <param name="RequestId">The caller's identifier.</param>
/// <param name="RequestTime">When it was asked for (UTC).</param>
public sealed record TakenReportRequest(string RequestId, DateTimeOffset RequestTime);

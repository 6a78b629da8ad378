namespace FleetTrend.Store.Requests;

/// <summary>A report of the period that was asked for.</summary>
/// <param name="ReportId">The report.</param>
/// <param name="Base">The base it is for; <c>*</c> for the whole fleet.</param>
/// <param name="AsOf">Its moment of knowledge (UTC); before the request where it was there already.</param>
public sealed record RequestedReport(long ReportId, string Base, DateTimeOffset AsOf);

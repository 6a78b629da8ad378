namespace FleetTrend.Store.Reports;

/// <summary>What became of a report that was to be saved.</summary>
/// <param name="ReportId">Identifier of the report of that base and period.</param>
/// <param name="IsNew">True where it was saved now, with its mails; false where that base and period had one, which stays.</param>
public sealed record SavedReport(long ReportId, bool IsNew);

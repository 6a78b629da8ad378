namespace FleetTrend.Store.Retention;

/// <summary>How many rows were removed.</summary>
/// <param name="Trends">Rows of trends that are gone, or keep their headline figures alone.</param>
/// <param name="Mails">Mails that were sent or given up.</param>
/// <param name="ReportRequests">Requests for reports that were answered.</param>
/// <param name="HeldRecords">Copies of records that were held and are accepted.</param>
public sealed record RemovedRows(int Trends, int Mails, int ReportRequests, int HeldRecords);

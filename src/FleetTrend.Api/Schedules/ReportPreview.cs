using FleetTrend.Store.Reports;

namespace FleetTrend.Api.Schedules;

/// <summary>What a schedule would send now.</summary>
/// <param name="Report">The report; its identifier is zero where it is not stored.</param>
/// <param name="Recipients">Those who have not been owed it.</param>
internal sealed record ReportPreview(StoredReport Report, IReadOnlyList<string> Recipients);

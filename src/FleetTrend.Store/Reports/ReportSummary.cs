namespace FleetTrend.Store.Reports;

/// <summary>A line of the report archive.</summary>
/// <param name="ReportId">Identifier; higher is newer.</param>
/// <param name="Base">The base it is for; <c>*</c> for the whole fleet.</param>
/// <param name="PeriodStart">First day of the period.</param>
/// <param name="PeriodEnd">Last day of the period.</param>
/// <param name="AsOf">The moment of knowledge (UTC).</param>
/// <param name="CodeVersion">Version of the code that made it.</param>
/// <param name="Subject">Subject of the mail.</param>
/// <param name="TypeGroup">The type group it is for; null for all.</param>
public sealed record ReportSummary(
    long ReportId,
    string Base,
    DateOnly PeriodStart,
    DateOnly PeriodEnd,
    DateTimeOffset AsOf,
    string CodeVersion,
    string Subject,
    string? TypeGroup = null);

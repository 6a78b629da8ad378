using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.OpenFindings;

/// <summary>Every open finding, of all aircraft or of one.</summary>
internal sealed class OpenFindingsModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "Open now",
    "Findings that nobody has closed: deferred, monitored, or without any action. Leaks and missing pieces come first.",
    "/open",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.Fleet, Analyses.OpenFindings], filter, ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        OpenFindingsSection.Compose(trends) with { Heading = "Open findings" };
}

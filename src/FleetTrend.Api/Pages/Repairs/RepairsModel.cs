using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.Repairs;

/// <summary>Whether repairs hold.</summary>
internal sealed class RepairsModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "Does the repair hold?",
    "What was welded, stop-drilled, replaced or re-torqued, how often it came back and after how many flight hours, and which of them holds longer.",
    "/repairs",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.Repairs], new ResultFilter(), ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        RepairsSection.Compose(trends) with { Heading = "Repairs" };
}

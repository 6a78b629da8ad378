using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.Spares;

/// <summary>Spares that each base will need.</summary>
internal sealed class SparesModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "Spares",
    "How many parts each base will need, what is on the shelf, and what to order.",
    "/spares",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.Spares, Analyses.Scores], new ResultFilter(), ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) => SparesSection.Compose(trends) with { Heading = "Parts by base" };
}

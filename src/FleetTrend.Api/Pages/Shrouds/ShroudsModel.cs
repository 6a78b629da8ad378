using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.Shrouds;

/// <summary>Stop-drilled shrouds, and clamp bolts by the state of their hex.</summary>
internal sealed class ShroudsModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "Shroud and bolts",
    "Stop drills per heat shroud with the hours to its renewal, and clamp bolts by the state of their hex.",
    "/shrouds",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.Shrouds], new ResultFilter(), ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        ShroudsSection.Compose(trends) with { Heading = "Shrouds and bolts" };
}

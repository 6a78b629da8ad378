using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.Positions;

/// <summary>Whether one cylinder or side is worse.</summary>
internal sealed class PositionsModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "Cylinder and side",
    "Whether one cylinder or one side is really worse than the others of the same aircraft, or no more than chance allows.",
    "/positions",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.Positions], new ResultFilter(), ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        PositionsSection.Compose(trends) with { Heading = "Compared" };
}

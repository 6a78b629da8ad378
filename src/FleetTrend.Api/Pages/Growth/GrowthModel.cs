using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.Growth;

/// <summary>Which way each kind of place goes.</summary>
internal sealed class GrowthModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "Getting worse or better?",
    "Whether cracks, leaks and other findings come more or less often than they did at each kind of location, over the calendar and over flight hours.",
    "/growth",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.Growth], new ResultFilter(), ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        GrowthSection.Compose(trends) with { Heading = "Kinds of location" };
}

using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.LeakErosions;

/// <summary>How soon leaks erode their port faces.</summary>
internal sealed class LeakErosionsModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "Leak to eroded face",
    "How many flight hours from the first trace of a leak at an exhaust port to an eroded port face, and the chance of each leak that is open now.",
    "/leaks",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.LeakErosions], new ResultFilter(), ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        LeakErosionsSection.Compose(trends) with { Heading = "Leaks" };
}

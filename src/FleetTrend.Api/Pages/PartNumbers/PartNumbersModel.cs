using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.PartNumbers;

/// <summary>Which part number lasts longer.</summary>
internal sealed class PartNumbersModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "Which part number lasts longer?",
    "Of parts of one kind, whether one part number lasts longer or fails early less often than another, or no more than chance allows.",
    "/part-numbers",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.PartNumbers], new ResultFilter(), ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        PartNumbersSection.Compose(trends) with { Heading = "Compared" };
}

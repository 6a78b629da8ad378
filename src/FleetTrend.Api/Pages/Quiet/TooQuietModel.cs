using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.Quiet;

/// <summary>Every question about what is too quiet, with the counts behind it; of all aircraft or of one.</summary>
internal sealed class TooQuietModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "Too quiet?",
    "Aircraft with far fewer findings than the others would have, and locations that are never examined. These are questions and no verdicts: a quiet aircraft may be in good order.",
    "/too-quiet",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.Quiet], filter, ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        QuietSection.Compose(trends) with { Heading = "What is asked" };
}

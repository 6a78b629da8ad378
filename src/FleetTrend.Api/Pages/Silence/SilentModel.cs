using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.Silence;

/// <summary>Aircraft of which nothing comes any more.</summary>
internal sealed class SilentModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "No word from",
    "Aircraft whose hours or inspections no longer come as they used to. These are questions: an aircraft may not fly, or a tool may no longer send.",
    "/silent",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.Fleet, Analyses.Silence], filter, ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        SilenceSection.Compose(trends) with { Heading = "Silent aircraft" };
}

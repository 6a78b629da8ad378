using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using FleetTrend.Trends.Silence;

namespace FleetTrend.Api.Pages.Silence;

/// <summary>Aircraft and sources of which nothing comes any more.</summary>
internal sealed class SilentModel(ResultReader results, FreshnessReader freshness, NameFilters names, SilentSourceReader silentSources) : SectionModel(
    "No word from",
    "Aircraft whose hours or inspections no longer come as they used to, and sources that no longer send. These are questions: an aircraft may not fly, or a tool may no longer send.",
    "/silent",
    results,
    freshness,
    names)
{
    private IReadOnlyList<SilentSource> sources = [];

    /// <inheritdoc/>
    protected override async Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct)
    {
        // A source is of no one aircraft.
        sources = filter.Registration is null ? await silentSources.ReadAsync(published.AsOf, ct) : [];
        return await Results.AssembleAsync(published, [Analyses.Fleet, Analyses.Silence], filter, ct);
    }

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        SilenceSection.Compose(trends, sources) with { Heading = "Silent aircraft and sources" };
}

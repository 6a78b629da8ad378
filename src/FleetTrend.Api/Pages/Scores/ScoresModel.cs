using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.Scores;

/// <summary>How right forecasts were, quarter by quarter.</summary>
internal sealed class ScoresModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "How right were we?",
    "Whether what these pages said came true, quarter by quarter, and which of it is off.",
    "/score",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.Scores, Analyses.ChanceCalibrations], new ResultFilter(), ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) => ScoresSection.Compose(trends) with { Heading = "The score" };
}

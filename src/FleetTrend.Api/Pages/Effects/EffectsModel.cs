using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.Effects;

/// <summary>Whether what was done helped: every action on a flag and every practice change, with its counts.</summary>
internal sealed class EffectsModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "Did it help?",
    "Actions on flags and changes of practice: what was found before, what since, beside those not touched. None of it returns an aircraft to service.",
    "/effects",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.Effects], filter, ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        EffectsSection.Compose(trends) with { Heading = "What was done" };
}

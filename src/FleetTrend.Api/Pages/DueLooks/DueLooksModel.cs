using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.DueLooks;

/// <summary>When each aircraft is due, or what is due on one.</summary>
internal sealed class DueLooksModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "Due",
    "When each aircraft is due for its next look, by the look intervals and by how much it flies, and which locations inspections have passed over.",
    "/due",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.Fleet, Analyses.DueLooks], filter, ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        (registration is not null && trends.DueLooks is [var one] ? DueLooksSection.Compose(one, trends.AsOf) : DueLooksSection.Compose(trends))
            with
        { Heading = "Looks that are due" };
}

using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.RenewalAges;

/// <summary>When to renew parts, and how often to look at them.</summary>
internal sealed class RenewalAgesModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "When to renew, how often to look",
    "For each kind of part the age at which renewing it costs least, if renewing by age helps at all, and the longest interval between looks that keeps the chance of an undetected "
        + "failure. What a failure costs, the chance that is allowed and the limits of makers and regulations are among the parameters.",
    "/renewal",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.RenewalAges], new ResultFilter(), ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        RenewalAgesSection.Compose(trends) with { Heading = "Kinds of part" };
}

using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.Parts;

/// <summary>Every kind of part: how many failed, and how long they last.</summary>
internal sealed class PartsModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "How long parts last",
    "Each kind of part of each type group: how many lives are known, how many failed, and by how many hours half of them do. A kind leads to its curve and its bases.",
    "/parts",
    results,
    freshness,
    names)
{
    /// <summary>The page of a kind of part.</summary>
    public static Uri PageOf(string typeGroup, string kind) => new($"/parts/{Uri.EscapeDataString(typeGroup)}/{Uri.EscapeDataString(kind)}", UriKind.Relative);

    /// <inheritdoc/>
    protected override Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct) =>
        Results.AssembleAsync(published, [Analyses.PartLives], new ResultFilter(), ct);

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        PartLivesSection.Compose(trends, PageOf) with { Heading = "Kinds of part" };
}

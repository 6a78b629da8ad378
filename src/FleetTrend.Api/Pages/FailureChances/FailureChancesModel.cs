using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Api.Pages.FailureChances;

/// <summary>Chances before the next look of the aircraft with the most failures to come, or of the parts of one.</summary>
internal sealed class FailureChancesModel(ResultReader results, FreshnessReader freshness, NameFilters names) : SectionModel(
    "Chance before the next look",
    "How likely each part in service is to fail before its next look, at its age, given that it was last seen good; how many that makes for an aircraft; and whether "
        + "such chances came true.",
    "/chances",
    results,
    freshness,
    names)
{
    /// <inheritdoc/>
    protected override async Task<TrendSnapshot> ReadAsync(PublishedTrends published, ResultFilter filter, CancellationToken ct)
    {
        var trends = await Results.AssembleAsync(published, [Analyses.ChanceCalibrations, Analyses.Scores], new ResultFilter(), ct);
        if (filter.Registration is not null)
            return trends with { FailureChances = await Results.ReadAsync(published, Analyses.FailureChances, filter, ct) };
        var greatest = await Results.ReadGreatestAsync(published, Analyses.FailureChances, FailureChancesSection.MostRows, ct);
        return trends with { FailureChances = [.. Analyses.FailureChances.Order(greatest)] };
    }

    /// <inheritdoc/>
    protected override ReportSection Compose(TrendSnapshot trends, string? registration) =>
        (registration is not null && trends.FailureChances is [var one]
            ? FailureChancesSection.Compose(one, trends.AsOf, trends.Scores)
            : FailureChancesSection.Compose(trends))
            with
        { Heading = "Chances" };
}

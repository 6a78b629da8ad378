using System.Text.Json;
using FleetTrend.Results;
using FleetTrend.Results.Reading;
using FleetTrend.Results.Refreshes;
using FleetTrend.Results.Summaries;
using FleetTrend.Store.Flags;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using FleetTrend.Trends.Flags;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Trends;

/// <summary>Refreshes, and results that a test has made up in the place of a refresh.</summary>
internal static class Refreshed
{
    /// <summary>A whole refresh, and what it published.</summary>
    public static async Task<TrendSnapshot> RefreshAsync(this IServiceProvider services)
    {
        var asOf = await services.GetRequiredService<TrendRefresh>().RunAsync(default);
        var reader = services.GetRequiredService<ResultReader>();
        return await reader.AssembleAsync((await reader.AtAsync(asOf, default))!, default);
    }

    /// <summary>Publishes made-up trends as if a refresh had computed them.</summary>
    public static async Task PublishAsync(this IServiceProvider services, TrendSnapshot trends)
    {
        var store = services.GetRequiredService<ResultStore>();
        var summary = new SetSummary
        {
            Tests = new Dictionary<string, TestCounts>
            {
                [Analyses.PartLives.Name] = TestCounts.Count(trends.PartLives
                    .SelectMany(l => new[] { l.Contrast?.MedianTest, l.Contrast?.EarlyTest }).Where(t => t is not null).Select(t => t!.PValue)),
            },
            Candidates = new FlagCandidates
            {
                Changes = [],
                PartLives = [],
                BaseTests = TestCounts.None,
            },
            Marks = [],
        };
        var rows = Rows(Analyses.Fleet, trends.Fleet).Concat(Rows(Analyses.Rates, trends.Rates)).Concat(Rows(Analyses.Recurrences, trends.Recurrences))
            .Concat(Rows(Analyses.Repeats, trends.Repeats)).Concat(Rows(Analyses.RecurrenceContrasts, trends.RecurrenceContrasts))
            .Concat(Rows(Analyses.PartLives, trends.PartLives)).Concat(Rows(Analyses.PartNumbers, trends.PartNumbers))
            .Concat(Rows(Analyses.Levels, trends.Levels)).Concat(Rows(Analyses.Effects, trends.Effects)).Concat(Rows(Analyses.Scores, trends.Scores))
            .Concat(Rows(Analyses.OpenFindings, trends.OpenFindings))
            .Concat(Rows(Analyses.DueLooks, trends.DueLooks))
            .Concat(Rows(Analyses.FailureChances, trends.FailureChances)).Concat(Rows(Analyses.ChanceCalibrations, trends.ChanceCalibrations))
            .Concat(Rows(Analyses.Repairs, trends.Repairs)).Concat(Rows(Analyses.LeakErosions, trends.LeakErosions))
            .Concat(Rows(Analyses.Spares, trends.Spares)).Concat(Rows(Analyses.Positions, trends.Positions)).Concat(Rows(Analyses.Shrouds, trends.Shrouds))
            .Concat(Rows(Analyses.RenewalAges, trends.RenewalAges)).Concat(Rows(Analyses.Growth, trends.Growth))
            .Concat(Rows(Analyses.Quiet, trends.Quiet))
            .Concat(Rows(Analyses.Silence, trends.Silences)).Concat(Rows(Analyses.DataProblems, trends.DataProblems));
        var setId = await store.AddSetAsync(trends.AsOf, "made-up", JsonSerializer.Serialize(summary, TrendJson.Options), rows, default);
        await store.PublishAsync(
            new PublishedTrends
            {
                AsOf = trends.AsOf,
                CodeVersion = trends.CodeVersion,
                ParametersJson = JsonSerializer.Serialize(trends.Parameters, TrendJson.Options),
                SetIds = [setId],
                FleetJson = JsonSerializer.Serialize(new FleetSummary { Flags = trends.Flags }, TrendJson.Options),
            },
            default);
    }

    /// <summary>Raises the flags of made-up trends.</summary>
    public static Task<IReadOnlyList<StoredFlag>> RaiseAsync(this IServiceProvider services, TrendSnapshot trends) =>
        services.GetRequiredService<FlagStore>().RaiseAsync(trends.AsOf, [.. trends.Flags.Select(FlagBodies.ToProposal)], default);

    private static IEnumerable<NewResult> Rows<T>(Analysis<T> analysis, IReadOnlyList<T> items)
        where T : notnull => items.Select(item =>
        {
            var subject = analysis.SubjectOf(item);
            return new NewResult(
                analysis.Name, subject.Registration, subject.Location, subject.Kind, subject.Base, 1, [],
                JsonSerializer.SerializeToUtf8Bytes(new[] { item }, TrendJson.Options));
        });
}

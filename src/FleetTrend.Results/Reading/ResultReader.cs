using System.Collections.Concurrent;
using System.Text.Json;
using FleetTrend.Results.Summaries;
using FleetTrend.Store.Results;
using FleetTrend.Trends;

namespace FleetTrend.Results.Reading;

/// <summary>Reads published results: the rows that are asked for, settled by all tests of their moment.</summary>
public sealed class ResultReader(ResultStore store)
{
    private const int All = int.MaxValue;
    private volatile Families? latest;

    /// <summary>The latest that is published; null before the first refresh.</summary>
    public Task<PublishedTrends?> LatestAsync(CancellationToken ct) => store.LatestAsync(ct);

    /// <summary>The parameters of a moment that was published, also where its results are not kept any more; null where it never was.</summary>
    public async Task<TrendParameters?> ParametersAtAsync(DateTimeOffset asOf, CancellationToken ct) =>
        await store.AtAsync(asOf, ct) is { } published ? ParametersOf(published) : null;

    /// <summary>What is published of exactly a moment; null where nothing is, or is not kept any more.</summary>
    public async Task<PublishedTrends?> AtAsync(DateTimeOffset asOf, CancellationToken ct) =>
        await store.AtAsync(asOf, ct) is { IsWhole: true } kept ? kept : null;

    /// <summary>The parameters behind a published moment.</summary>
    public static TrendParameters ParametersOf(PublishedTrends trends) =>
        JsonSerializer.Deserialize<TrendParameters>(trends.ParametersJson, TrendJson.Options) ?? throw new JsonException("There are no parameters.");

    /// <summary>All answers of an analysis that a filter lets through, by type group and then in the order of the analysis.</summary>
    public async Task<IReadOnlyList<T>> ReadAsync<T>(PublishedTrends trends, Analysis<T> analysis, ResultFilter filter, CancellationToken ct)
        where T : notnull => await ReadAsync(trends, analysis, filter, 0, All, ct);

    /// <summary>Some of them.</summary>
    /// <param name="trends">The moment.</param>
    /// <param name="analysis">The analysis.</param>
    /// <param name="filter">Which rows.</param>
    /// <param name="after">Answers to skip.</param>
    /// <param name="count">Answers wanted.</param>
    /// <param name="ct">Cancels.</param>
    public async Task<IReadOnlyList<T>> ReadAsync<T>(
        PublishedTrends trends, Analysis<T> analysis, ResultFilter filter, long after, int count, CancellationToken ct)
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(trends);
        ArgumentNullException.ThrowIfNull(analysis);
        var rows = await store.ReadAsync(trends.SetIds, analysis.Name, filter, after, count, ct);
        if (rows.Count == 0)
            return [];
        var tests = (await FamiliesAsync(trends, ct)).Find(analysis.Name);
        var parameters = ParametersOf(trends);
        var answers = new List<T>();
        foreach (var row in rows)
        {
            var items = analysis.Settle(analysis.Read(row.Detail), tests, parameters);
            var skip = Math.Max(0, after - row.First);
            answers.AddRange(items.Skip((int)skip).Take(count - answers.Count));
        }

        return answers;
    }

    /// <summary>The answers whose first headline figure is greatest, in no order: of a large fleet the few that a page shows.</summary>
    public async Task<IReadOnlyList<T>> ReadGreatestAsync<T>(PublishedTrends trends, Analysis<T> analysis, int count, CancellationToken ct)
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(trends);
        ArgumentNullException.ThrowIfNull(analysis);
        var tests = (await FamiliesAsync(trends, ct)).Find(analysis.Name);
        var parameters = ParametersOf(trends);
        return
        [
            .. (await store.ReadGreatestAsync(trends.SetIds, analysis.Name, count, ct)).SelectMany(d => analysis.Settle(analysis.Read(d), tests, parameters)),
        ];
    }

    /// <summary>A moment put together in memory, for a report.</summary>
    public Task<TrendSnapshot> AssembleAsync(PublishedTrends trends, CancellationToken ct) =>
        AssembleAsync(trends, Analyses.All, new ResultFilter(), ct);

    /// <summary>A moment put together in memory with some analyses and rows; the others are empty.</summary>
    public async Task<TrendSnapshot> AssembleAsync(
        PublishedTrends trends, IReadOnlyList<Analysis> wanted, ResultFilter filter, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(trends);
        ArgumentNullException.ThrowIfNull(wanted);
        var fleet = FleetOf(trends);
        return new TrendSnapshot
        {
            AsOf = trends.AsOf.ToUniversalTime(),
            Parameters = ParametersOf(trends),
            CodeVersion = trends.CodeVersion,
            Fleet = await AllAsync(Analyses.Fleet),
            Rates = await AllAsync(Analyses.Rates),
            Recurrences = await AllAsync(Analyses.Recurrences),
            Repeats = await AllAsync(Analyses.Repeats),
            RecurrenceContrasts = await AllAsync(Analyses.RecurrenceContrasts),
            PartLives = await AllAsync(Analyses.PartLives),
            Levels = await AllAsync(Analyses.Levels),
            OpenFindings = await AllAsync(Analyses.OpenFindings),
            DueLooks = await AllAsync(Analyses.DueLooks),
            FailureChances = await AllAsync(Analyses.FailureChances),
            ChanceCalibrations = await AllAsync(Analyses.ChanceCalibrations),
            PartNumbers = await AllAsync(Analyses.PartNumbers),
            Repairs = await AllAsync(Analyses.Repairs),
            Spares = await AllAsync(Analyses.Spares),
            LeakErosions = await AllAsync(Analyses.LeakErosions),
            Positions = await AllAsync(Analyses.Positions),
            Shrouds = await AllAsync(Analyses.Shrouds),
            RenewalAges = await AllAsync(Analyses.RenewalAges),
            Growth = await AllAsync(Analyses.Growth),
            Effects = await AllAsync(Analyses.Effects),
            Scores = await AllAsync(Analyses.Scores),
            Quiet = await AllAsync(Analyses.Quiet),
            Silences = await AllAsync(Analyses.Silence),
            Flags = fleet.Flags,
            DataProblems = wanted.Contains(Analyses.DataProblems)
                ? [.. Analyses.DataProblems.Order((await AllAsync(Analyses.DataProblems)).Concat(fleet.OtherProblems))]
                : [],
        };

        async Task<IReadOnlyList<T>> AllAsync<T>(Analysis<T> analysis)
            where T : notnull => wanted.Contains(analysis) ? [.. analysis.Order(await ReadAsync(trends, analysis, filter, ct))] : [];
    }

    internal static FleetSummary FleetOf(PublishedTrends trends) =>
        JsonSerializer.Deserialize<FleetSummary>(trends.FleetJson, TrendJson.Options) ?? throw new JsonException("There is no summary.");

    internal static SetSummary Summary(ResultSet set) =>
        JsonSerializer.Deserialize<SetSummary>(set.SummaryJson, TrendJson.Options) ?? throw new JsonException($"Set {set.SetId} has no summary.");

    private async Task<Families> FamiliesAsync(PublishedTrends trends, CancellationToken ct)
    {
        if (this.latest is { } latest && latest.AsOf == trends.AsOf)
            return latest;
        return this.latest = new Families(trends.AsOf, [.. (await store.ReadSetsAsync(trends.SetIds, ct)).Select(Summary)]);
    }

    /// <summary>All tests of a moment, by analysis; a family is put together when it is first asked for.</summary>
    private sealed class Families(DateTimeOffset asOf, IReadOnlyList<SetSummary> sets)
    {
        private readonly ConcurrentDictionary<string, TestFamily> byAnalysis = new(StringComparer.Ordinal);

        public DateTimeOffset AsOf => asOf;

        public TestFamily Find(string analysis) => byAnalysis.GetOrAdd(
            analysis, name => new TestFamily(sets.Select(s => s.Tests.GetValueOrDefault(name, TestCounts.None))));
    }
}

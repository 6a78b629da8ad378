using System.Diagnostics;
using System.Reflection;
using System.Text.Json;
using FleetTrend.Observations;
using FleetTrend.Observations.DataProblems;
using FleetTrend.Results.Forecasts;
using FleetTrend.Results.Observing;
using FleetTrend.Results.Reading;
using FleetTrend.Results.Summaries;
using FleetTrend.Statistics.Effects;
using FleetTrend.Store.DataProblems;
using FleetTrend.Store.Flags;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Observed;
using FleetTrend.Store.Parameters;
using FleetTrend.Store.Requests;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.Restarts;
using Microsoft.Extensions.Logging;

namespace FleetTrend.Results.Refreshes;

/// <summary>
/// The refresh in its three steps: fix a moment and see which type groups have changed; compute each of them, on any worker; publish the
/// moment with the sets of all. Every step may run twice and does its work once.
/// </summary>
public sealed class TrendRefresh(
    Knowledge knowledge,
    AircraftObserver observer,
    TypeGroupReader typeGroups,
    ResultStore results,
    ResultReader reader,
    StartedRefreshes started,
    FlagStore flags,
    DataProblemStore problems,
    ForecastKeeper forecasts,
    ParameterStore parameters,
    RefreshRequests requests,
    AnalysisList analyses,
    ILogger<TrendRefresh> log)
{
    private static readonly Guid Code = CodeIdentity.Compute(
        typeof(FleetTrends), typeof(Observe), typeof(FleetTrend.Records.FleetHistory), typeof(FleetTrend.Statistics.Interval));

    /// <summary>Version of this code, stored with what it computes.</summary>
    public static string CodeVersion { get; } =
        typeof(TrendRefresh).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";

    /// <summary>The parameters that were in force at a moment.</summary>
    public async Task<TrendParameters> ParametersAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        var inForce = await parameters.ReadAsync(asOf, ct);
        return TrendParameters.Read(inForce.ValuesJson, inForce.Revision);
    }

    /// <summary>A whole refresh in this process: its moment.</summary>
    public async Task<DateTimeOffset> RunAsync(CancellationToken ct)
    {
        var (asOf, missing) = await StartAsync(isHandedOut: true, ct);
        await Parallel.ForEachAsync(
            missing, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = ct },
            async (typeGroup, stop) => await ComputeAsync(asOf, typeGroup, stop));
        await PublishAsync(asOf, ct);
        return asOf;
    }

    /// <summary>Fixes a moment, and names the type groups that are to be computed. Where there is none, it can be published.</summary>
    public Task<(DateTimeOffset AsOf, IReadOnlyList<string> TypeGroups)> StartAsync(CancellationToken ct) => StartAsync(isHandedOut: false, ct);

    private async Task<(DateTimeOffset AsOf, IReadOnlyList<string> TypeGroups)> StartAsync(bool isHandedOut, CancellationToken ct)
    {
        var asOf = await knowledge.FixAsOfAsync(ct);
        var states = await observer.ReadStatesAsync(asOf, null, ct);
        var holding = await HoldingSetsAsync(asOf, states, ct);
        List<(string TypeGroup, long? SetId)> groups =
        [
            .. states.SelectMany(s => s.TypeGroups).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
                .Select(g => (g, holding.TryGetValue(g, out var setId) ? setId : (long?)null)),
        ];
        await started.StartAsync(asOf, groups, isHandedOut, ct);
        return (asOf, [.. groups.Where(g => g.SetId is null).Select(g => g.TypeGroup)]);
    }

    /// <summary>Computes a type group of a refresh.</summary>
    /// <returns>Whether it was the last: the refresh can be published.</returns>
    public async Task<bool> ComputeAsync(DateTimeOffset asOf, string typeGroup, CancellationToken ct)
    {
        var begun = Stopwatch.GetTimestamp();
        if (await started.ReadAsync(asOf, ct) is not { } before)
            return false;
        if (!before.Missing.Contains(typeGroup, StringComparer.Ordinal))
            return before.Missing.Count == 0;
        var (trends, marks) = await ComputeGroupAsync(asOf, typeGroup, await ParametersAsync(asOf, ct), keep: true, ct);
        var summary = new SetSummary
        {
            Tests = trends.Results.Where(r => r.Tests.PValues.Count > 0).ToDictionary(r => r.Analysis.Name, r => r.Tests, StringComparer.Ordinal),
            Candidates = trends.Candidates,
            Marks = marks,
        };
        var setId = await results.AddSetAsync(
            asOf, typeGroup, JsonSerializer.Serialize(summary, TrendJson.Options), trends.Results.SelectMany(ToRows), ct);
        var now = await started.DoneAsync(asOf, typeGroup, setId, ct);
        RefreshLog.TypeGroupComputed(log, typeGroup, asOf, Stopwatch.GetElapsedTime(begun).TotalSeconds);
        return now is { Missing.Count: 0 };
    }

    /// <summary>Publishes a refresh of which every type group is computed: from then on readers see it. Then raises flags and opens data checks.</summary>
    public async Task PublishAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        var state = await started.ReadAsync(asOf, ct);
        if (state is null && await results.AtAsync(asOf, ct) is not null)
            return; // by whoever computed the last type group beside us
        if (state is { Missing.Count: > 0 } || (state is null && (await observer.ReadStatesAsync(asOf, null, ct)).Count > 0))
            throw new InvalidOperationException($"The refresh as of {asOf:O} is not complete, or was given up.");
        var inForce = await ParametersAsync(asOf, ct);
        var fleet = await observer.ReadFleetAsync(asOf, ct);
        var sets = await results.ReadSetsAsync(state?.SetIds ?? [], ct);
        List<SetSummary> summaries = [.. sets.Select(ResultReader.Summary)];
        var proposed = ProposedFlags.Propose(
            [.. summaries.Select(s => s.Candidates)], inForce, await observer.ReadKindsAsync(ct), fleet.FlagClosings);
        var found = new FleetSummary
        {
            Code = Code,
            Flags = proposed,
            OtherProblems = Observe.OtherProblems(summaries.SelectMany(s => s.Marks), fleet.RetractionsAlone),
        };
        var published = new PublishedTrends
        {
            AsOf = asOf,
            CodeVersion = CodeVersion,
            ParametersJson = JsonSerializer.Serialize(inForce, TrendJson.Options),
            SetIds = [.. sets.Select(s => s.SetId)],
            FleetJson = JsonSerializer.Serialize(found, TrendJson.Options),
        };
        await results.PublishAsync(published, ct);
        await forecasts.KeepAsync(published, [.. sets.Select(s => s.TypeGroup)], ct);
        var raised = await flags.RaiseAsync(asOf, [.. proposed.Select(FlagBodies.ToProposal)], ct);
        await flags.JudgeAsync(asOf, await ReadVerdictsAsync(asOf, ct), ct);
        var listed = await ReadProblemsAsync(asOf, ct);
        var opened = await problems.SaveAsync(asOf, [.. listed.Select(ToFound)], ct);
        await requests.DoneAsync(asOf, ct);
        await started.EndAsync(asOf, ct);
        await results.ThinAsync(ct);
        RefreshLog.TrendsRefreshed(log, asOf, summaries.Sum(s => s.Marks.Count), proposed.Count, raised.Count);
        RefreshLog.DataChecked(log, asOf, listed.Count, opened);
    }

    /// <summary>Notes that a refresh failed and gives it up; what was owed stays owed.</summary>
    public async Task GiveUpAsync(DateTimeOffset? asOf, CancellationToken ct)
    {
        await requests.FailedAsync(ct);
        if (asOf is { } moment)
            await started.EndAsync(moment, ct);
    }

    /// <summary>Trends of any moment from the records, whole; the same moment and parameters give the same trends.</summary>
    public async Task<TrendSnapshot> ComputeAsync(DateTimeOffset asOf, TrendParameters chosen, string codeVersion, CancellationToken ct)
    {
        var fleet = await observer.ReadFleetAsync(asOf, ct);
        var groups = new List<TypeGroupTrends>();
        var marks = new List<AircraftMark>();
        foreach (var (typeGroup, _) in await typeGroups.ReadSizesAsync(asOf, ct))
        {
            var (trends, own) = await ComputeGroupAsync(asOf, typeGroup, chosen, keep: false, ct);
            groups.Add(trends);
            marks.AddRange(own);
        }

        return FleetTrends.Assemble(
            asOf, chosen, codeVersion, groups, Observe.OtherProblems(marks, fleet.RetractionsAlone), await observer.ReadKindsAsync(ct),
            fleet.FlagClosings);
    }

    private async Task<(TypeGroupTrends Trends, IReadOnlyList<AircraftMark> Marks)> ComputeGroupAsync(
        DateTimeOffset asOf, string typeGroup, TrendParameters chosen, bool keep, CancellationToken ct)
    {
        var inputs = await typeGroups.ReadAsync(asOf, typeGroup, chosen, keep, ct);
        return (TypeGroupTrends.Compute(inputs, analyses.All), [.. inputs.Present.Select(a => a.Mark)]);
    }

    /// <summary>
    /// Sets of the moment that was published last, of those type groups where nothing has changed since. Another day, other parameters or
    /// another code change all of them.
    /// </summary>
    private async Task<IReadOnlyDictionary<string, long>> HoldingSetsAsync(DateTimeOffset asOf, IReadOnlyList<AircraftState> states, CancellationToken ct)
    {
        if (await results.LatestAsync(ct) is not { } latest
            || latest.AsOf.UtcDateTime.Date != asOf.UtcDateTime.Date
            || latest.ParametersJson != JsonSerializer.Serialize(await ParametersAsync(asOf, ct), TrendJson.Options)
            || ResultReader.FleetOf(latest).Code != Code)
        {
            return new Dictionary<string, long>(StringComparer.Ordinal);
        }

        var fleet = await observer.ReadFleetAsync(asOf, ct);
        var settled = fleet.FlagClosings.Where(c => c.CloseTime > latest.AsOf).Select(c => FlagSubjects.About(c.Subject)).ToHashSet(StringComparer.Ordinal);
        if (fleet.PracticeChanges.Any(p => p.AcceptTime > latest.AsOf) || fleet.StockCounts.Any(s => s.AcceptTime > latest.AsOf))
            return new Dictionary<string, long>(StringComparer.Ordinal);
        var changed = states.Where(s => s.HasChanged || settled.Contains(s.Registration)).SelectMany(s => s.TypeGroups)
            .Concat(settled).ToHashSet(StringComparer.Ordinal);
        return (await results.ReadSetsAsync(latest.SetIds, ct))
            .Where(s => !changed.Contains(s.TypeGroup))
            .ToDictionary(s => s.TypeGroup, s => s.SetId, StringComparer.Ordinal);
    }

    private async Task<IReadOnlyList<DataProblem>> ReadProblemsAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        var published = await results.AtAsync(asOf, ct) ?? throw new InvalidOperationException($"Trends of {asOf:O} are not published.");
        var ofAircraft = await reader.ReadAsync(published, Analyses.DataProblems, new ResultFilter(), ct);
        return [.. Analyses.DataProblems.Order(ofAircraft.Concat(ResultReader.FleetOf(published).OtherProblems))];
    }

    /// <summary>What the effects say of flags about which something was done; of one that is too early to tell, nothing.</summary>
    private async Task<IReadOnlyList<FlagVerdict>> ReadVerdictsAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        if (!analyses.All.Contains(Analyses.Effects))
            return [];
        var published = await results.AtAsync(asOf, ct) ?? throw new InvalidOperationException($"Trends of {asOf:O} are not published.");
        return [.. (await reader.ReadAsync(published, Analyses.Effects, new ResultFilter(), ct))
            .Where(e => e.FlagSubject is not null && e.Verdict != EffectVerdict.TooEarly)
            .DistinctBy(e => e.FlagSubject, StringComparer.Ordinal) // an aircraft that changed its type group stands in both
            .Select(e => new FlagVerdict(e.FlagSubject!, e.Verdict == EffectVerdict.Helped, e.Statement))];
    }

    private static IEnumerable<NewResult> ToRows(AnalysisResult result) => result.Subjects.Select(s => new NewResult(
        result.Analysis.Name, s.Subject.Registration, s.Subject.Location, s.Subject.Kind, s.Subject.Base, s.Count,
        [.. s.Headlines.Select(h => new StoredHeadline(h.Label, (float?)h.Value, (float?)h.Lower, (float?)h.Upper, h.Events))], s.Write()));

    private static FoundDataProblem ToFound(DataProblem problem) => new()
    {
        Identity = problem.Identity,
        Fingerprint = problem.Fingerprint,
        Kind = problem.Kind.ToString(),
        Registration = problem.Registration.Length == 0 ? null : problem.Registration,
        OtherRegistration = problem.OtherRegistration,
        ProblemDate = problem.Date,
        Rule = ProblemRules.Find(problem.Kind),
        Description = problem.Description,
        Evidence = problem.Evidence,
    };
}

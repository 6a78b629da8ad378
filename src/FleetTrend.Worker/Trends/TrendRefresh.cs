using System.Diagnostics;
using System.Reflection;
using FleetTrend.Observations;
using FleetTrend.Store;
using FleetTrend.Store.DataProblems;
using FleetTrend.Store.Flags;
using FleetTrend.Store.Histories;
using FleetTrend.Store.Parameters;
using FleetTrend.Store.Requests;
using FleetTrend.Store.Snapshots;
using FleetTrend.Trends;

namespace FleetTrend.Worker.Trends;

/// <summary>Reads histories as of now, computes trends, and writes the snapshot, the flags that are new, and the data checks.</summary>
public sealed class TrendRefresh(
    Knowledge knowledge,
    HistoryReader histories,
    SnapshotStore snapshots,
    FlagStore flags,
    DataProblemStore checks,
    ParameterStore parameters,
    RefreshRequests requests,
    JobLock locks,
    ILogger<TrendRefresh> log)
{
    /// <summary>Version of this code, stored with what it computes.</summary>
    public static string CodeVersion { get; } =
        typeof(TrendRefresh).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";

    /// <summary>Computes and stores the trends as of now. Running it twice stores two snapshots, and raises each flag and opens each data check once.</summary>
    public async Task<TrendSnapshot> RunAsync(CancellationToken ct)
    {
        var started = Stopwatch.GetTimestamp();
        var asOf = await knowledge.FixAsOfAsync(ct);
        await using var running = await locks.TryEnterAsync(RefreshRequests.Running, ct); // told to those who ask for a refresh meanwhile
        var snapshot = await ComputeAsync(asOf, await ParametersAsync(asOf, ct), ct);
        await snapshots.SaveAsync(StoredTrends.From(snapshot), ct);
        var raised = await flags.RaiseAsync(asOf, StoredTrends.FlagsOf(snapshot), ct);
        var opened = await checks.SaveAsync(asOf, StoredTrends.ChecksOf(snapshot), ct);
        await requests.DoneAsync(asOf, ct);
        WorkerLog.TrendsRefreshed(log, asOf, snapshot.Fleet.Count, snapshot.Flags.Count, raised.Count, Stopwatch.GetElapsedTime(started).TotalSeconds);
        WorkerLog.DataChecked(log, asOf, snapshot.Problems.Count, opened);
        return snapshot;
    }

    /// <summary>The parameters that were in force at a moment.</summary>
    public async Task<TrendParameters> ParametersAsync(DateTimeOffset asOf, CancellationToken ct)
    {
        var inForce = await parameters.ReadAsync(asOf, ct);
        return TrendParameters.Read(inForce.ValuesJson, inForce.Revision);
    }

    /// <summary>Trends as of any moment; the same moment and parameters give the same trends.</summary>
    public async Task<TrendSnapshot> ComputeAsync(DateTimeOffset asOf, TrendParameters parameters, CancellationToken ct) =>
        FleetTrends.Compute(Observe.Fleet(await histories.ReadAsync(asOf, ct)), parameters, CodeVersion);
}

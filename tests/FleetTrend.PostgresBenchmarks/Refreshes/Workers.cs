using System.Diagnostics;
using System.Linq.Expressions;
using FleetTrend.PostgresBenchmarks.Postgres;
using FleetTrend.PostgresBenchmarks.Processes;
using FleetTrend.Store.Requests;
using FleetTrend.Worker.Jobs;
using Hangfire;
using Hangfire.PostgreSql;
using Hangfire.PostgreSql.Factories;
using Hangfire.States;
using Hangfire.Storage;
using Hangfire.Storage.Monitoring;

namespace FleetTrend.PostgresBenchmarks.Refreshes;

/// <summary>Workers on one database. They do what they are asked for and nothing by the clock.</summary>
internal sealed class Workers : IAsyncDisposable
{
    private const int LooksBetweenStates = 100;
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(30);
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(10);
    private static readonly string[] EndedBadly = [FailedState.StateName, DeletedState.StateName];

    private readonly BenchmarkDatabase database;
    private readonly string folder;
    private readonly int? processors;
    private readonly List<ProductProcess> processes = [];
    private readonly PostgreSqlStorage storage;
    private readonly BackgroundJobClient jobs;

    private Workers(BenchmarkDatabase database, string folder, int? processors)
    {
        this.processors = processors;
        this.database = database;
        this.folder = folder;

        // Jobs are written as the worker reads them.
        GlobalConfiguration.Configuration
            .SetDataCompatibilityLevel(CompatibilityLevel.Version_180)
            .UseSimpleAssemblyNameTypeSerializer()
            .UseRecommendedSerializerSettings();
        var options = new PostgreSqlStorageOptions { PrepareSchemaIfNecessary = false };
        storage = new PostgreSqlStorage(new NpgsqlConnectionFactory(database.ConnectionString, options), options);
        jobs = new BackgroundJobClient(storage);
    }

    /// <summary>The processes, in the order in which they were started.</summary>
    public IReadOnlyList<ProductProcess> Processes => processes;

    /// <summary>Starts one worker.</summary>
    /// <param name="database">Its database.</param>
    /// <param name="folder">Where its files go.</param>
    /// <param name="processors">How many processors each worker takes itself to have, and so computes type groups at once; null for
    /// those of the machine.</param>
    public static async Task<Workers> StartAsync(BenchmarkDatabase database, string folder, int? processors = null)
    {
        var workers = new Workers(database, folder, processors);
        await workers.AddAsync();
        return workers;
    }

    /// <summary>Starts another one.</summary>
    public async Task AddAsync()
    {
        processes.Add(await ProductProcess.StartWorkerAsync(database.ConnectionString, folder, processors));
        using var connection = storage.GetConnection();
        var schedule = new RecurringJobManager(storage);
        foreach (var job in connection.GetRecurringJobs())
            schedule.RemoveIfExists(job.Id);
    }

    /// <summary>Asks for a refresh as the API does, and waits until the worker holds it for done.</summary>
    public async Task<RefreshCost> RefreshAsync()
    {
        var before = processes.Select(p => p.ProcessorTime).ToList();
        var asked = await new RefreshRequests(database.DataSource).RequestAsync(write: true, default);
        var jobId = jobs.Enqueue<RefreshTrendsJob>(job => job.RunWhenDueAsync(CancellationToken.None));
        await UntilAsync(jobId, async () => !await database.ReadAsync<bool>(
            "select exists(select from refresh_requests where request_time <= $1)", asked.RequestTime.UtcDateTime));
        var end = TimeProvider.System.GetUtcNow().UtcDateTime;
        var start = History(jobId).Where(h => h.StateName == ProcessingState.StateName).Min(h => h.CreatedAt);
        return new RefreshCost(
            (end - start.ToUniversalTime()).TotalSeconds,
            [.. processes.Zip(before, (process, used) => (process.ProcessorTime - used).TotalSeconds)]);
    }

    /// <summary>Runs another job to its end.</summary>
    public async Task RunAsync<T>(Expression<Func<T, Task>> job)
    {
        var jobId = jobs.Enqueue(job);
        await UntilAsync(jobId, () => Task.FromResult(History(jobId).Any(h => h.StateName == SucceededState.StateName)));
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var process in processes)
            await process.DisposeAsync();
    }

    private async Task UntilAsync(string jobId, Func<Task<bool>> isDone)
    {
        var clock = Stopwatch.StartNew();
        for (var look = 1; !await isDone(); look++)
        {
            await Task.Delay(BetweenLooks);
            if (look % LooksBetweenStates != 0)
                continue;
            if (History(jobId).FirstOrDefault(h => EndedBadly.Contains(h.StateName)) is { } ended)
                throw new InvalidOperationException($"Job {jobId} failed: {ended.Reason}");
            if (clock.Elapsed > Patience)
                throw new InvalidOperationException($"Job {jobId} has not ended in {Patience.TotalMinutes} minutes.");
        }
    }

    private IList<StateHistoryDto> History(string jobId) =>
        storage.GetMonitoringApi().JobDetails(jobId).History;
}

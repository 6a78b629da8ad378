using System.Diagnostics;
using System.Linq.Expressions;
using FleetTrend.PostgresBenchmarks.Postgres;
using FleetTrend.PostgresBenchmarks.Processes;
using FleetTrend.Store;
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

    private readonly BenchmarkDatabase _database;
    private readonly string _folder;
    private readonly List<ProductProcess> _processes = [];
    private readonly PostgreSqlStorage _storage;
    private readonly BackgroundJobClient _jobs;

    private Workers(BenchmarkDatabase database, string folder)
    {
        _database = database;
        _folder = folder;

        // Jobs are written as the worker reads them.
        GlobalConfiguration.Configuration
            .SetDataCompatibilityLevel(CompatibilityLevel.Version_180)
            .UseSimpleAssemblyNameTypeSerializer()
            .UseRecommendedSerializerSettings();
        var options = new PostgreSqlStorageOptions { PrepareSchemaIfNecessary = false };
        _storage = new PostgreSqlStorage(new NpgsqlConnectionFactory(database.ConnectionString, options), options);
        _jobs = new BackgroundJobClient(_storage);
    }

    /// <summary>The processes, in the order in which they were started.</summary>
    public IReadOnlyList<ProductProcess> Processes => _processes;

    /// <summary>Starts one worker.</summary>
    public static async Task<Workers> StartAsync(BenchmarkDatabase database, string folder)
    {
        var workers = new Workers(database, folder);
        await workers.AddAsync();
        return workers;
    }

    /// <summary>Starts another one.</summary>
    public async Task AddAsync()
    {
        _processes.Add(await ProductProcess.StartWorkerAsync(_database.ConnectionString, _folder));
        using var connection = _storage.GetConnection();
        var schedule = new RecurringJobManager(_storage);
        foreach (var job in connection.GetRecurringJobs())
            schedule.RemoveIfExists(job.Id);
    }

    /// <summary>Asks for a refresh as the API does, and waits until the worker holds it for done.</summary>
    public async Task<RefreshCost> RefreshAsync()
    {
        var before = _processes.Select(p => p.ProcessorTime).ToList();
        var asked = await new RefreshRequests(_database.DataSource).RequestAsync(write: true, default);
        var jobId = _jobs.Enqueue<RefreshTrendsJob>(job => job.RunWhenDueAsync(CancellationToken.None));
        await UntilAsync(jobId, async () => !await _database.ReadAsync<bool>(
            "select exists(select from refresh_requests where request_time <= $1)", asked.RequestTime.UtcDateTime));
        var end = TimeProvider.System.GetUtcNow().UtcDateTime;
        var start = History(jobId).Where(h => h.StateName == ProcessingState.StateName).Min(h => h.CreatedAt);
        return new RefreshCost(
            (end - start.ToUniversalTime()).TotalSeconds,
            [.. _processes.Zip(before, (process, used) => (process.ProcessorTime - used).TotalSeconds)]);
    }

    /// <summary>Runs another job to its end.</summary>
    public async Task RunAsync<T>(Expression<Func<T, Task>> job)
    {
        var jobId = _jobs.Enqueue(job);
        await UntilAsync(jobId, () => Task.FromResult(History(jobId).Any(h => h.StateName == SucceededState.StateName)));
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var process in _processes)
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
        _storage.GetMonitoringApi().JobDetails(jobId).History;
}

using FleetTrend.Contracts.V1;
using FleetTrend.Hosting.Configuration;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store.Requests;
using FleetTrend.Store.Results;
using FleetTrend.Worker.Jobs;
using Hangfire;
using Hangfire.Common;
using Hangfire.States;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Reports;

/// <summary>A refresh whose worker was killed between fixing its moment and handing out the last of its jobs goes on at the next tick.</summary>
[Collection(SharedPostgres.Name)]
public sealed class KilledStartTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly HandedOut jobs = new();
    private ApiServer server = null!;
    private TrendRefresh refresh = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-A01") });
        await server.Trends.RequestRefreshAsync(new RequestRefreshRequest());
        refresh = ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services);
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task The_next_tick_hands_out_the_jobs_that_are_missing_once()
    {
        var (asOf, typeGroups) = await refresh.StartAsync(default); // and the worker dies
        var typeGroup = Assert.Single(typeGroups);

        await Tick().RunWhenDueAsync(default);
        Assert.Equal([(asOf, typeGroup)], jobs.OfTypeGroups);
        await Tick().RunWhenDueAsync(default);
        Assert.Single(jobs.OfTypeGroups);

        await TypeGroupJob().RunAsync(asOf, typeGroup, default);
        Assert.Equal(asOf, (await server.Services.GetRequiredService<ResultStore>().LatestAsync(default))!.AsOf);
        Assert.False(await IsOwedAsync());
    }

    [Fact]
    public async Task A_job_that_was_handed_out_twice_publishes_once_and_fails_nothing()
    {
        var (asOf, typeGroups) = await refresh.StartAsync(default); // its job is enqueued, and the worker dies before it has noted that
        await Tick().RunWhenDueAsync(default);

        await Task.WhenAll(Enumerable.Range(0, 2).Select(_ => Task.Run(() => TypeGroupJob().RunAsync(asOf, typeGroups[0], default))));
        await refresh.PublishAsync(asOf, default);
        Assert.Equal((1, 1), (await server.CountAsync("trends"), await server.CountAsync("result_sets")));
        Assert.Null((await server.Trends.ListRatesAsync(new ListRatesRequest())).Freshness.RefreshFailedTime);
    }

    [Fact]
    public async Task Where_nothing_has_changed_the_next_tick_publishes()
    {
        await refresh.RunAsync(default);
        await server.Trends.RequestRefreshAsync(new RequestRefreshRequest());
        var (asOf, typeGroups) = await refresh.StartAsync(default); // and the worker dies
        Assert.Empty(typeGroups);

        await Tick().RunWhenDueAsync(default);
        Assert.Equal(asOf, (await server.Services.GetRequiredService<ResultStore>().LatestAsync(default))!.AsOf);
        Assert.Empty(jobs.OfTypeGroups);
        Assert.False(await IsOwedAsync());
    }

    [Fact]
    public async Task One_that_a_process_computes_by_itself_is_left_to_it()
    {
        await server.Services.GetRequiredService<StartedRefreshes>().StartAsync(
            DateTimeOffset.UtcNow, [("trainer-four", null)], isHandedOut: true, default);
        await Tick().RunWhenDueAsync(default);
        Assert.Empty(jobs.OfTypeGroups);
    }

    private RefreshTrendsJob Tick() => ActivatorUtilities.CreateInstance<RefreshTrendsJob>(server.Services, refresh, new ScheduleSettings(), jobs);

    private RefreshTypeGroupJob TypeGroupJob() => ActivatorUtilities.CreateInstance<RefreshTypeGroupJob>(
        server.Services, ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services),
        ActivatorUtilities.CreateInstance<Worker.WorkerMetrics>(server.Services));

    private Task<bool> IsOwedAsync() =>
        server.Services.GetRequiredService<RefreshRequests>().DueAsync(TimeSpan.Zero, TimeSpan.Zero, TimeSpan.Zero, default);

    /// <summary>Keeps what was enqueued.</summary>
    private sealed class HandedOut : IBackgroundJobClient
    {
        public List<(DateTimeOffset AsOf, string TypeGroup)> OfTypeGroups { get; } = [];

        public string Create(Job job, IState state)
        {
            Assert.Equal(typeof(RefreshTypeGroupJob), job.Type);
            OfTypeGroups.Add(((DateTimeOffset)job.Args[0], (string)job.Args[1]));
            return "1";
        }

        public bool ChangeState(string jobId, IState state, string expectedState) => throw new InvalidOperationException("A job was changed.");
    }
}

using FleetTrend.Contracts.V1;
using FleetTrend.Hosting.Configuration;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store.Requests;
using FleetTrend.Store.Results;
using FleetTrend.Worker.Jobs;
using FleetTrend.Worker.Reports;
using Google.Rpc;
using Grpc.Core;
using Hangfire;
using Hangfire.Common;
using Hangfire.States;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using ReportRequestState = FleetTrend.Contracts.V1.ReportRequestState;

namespace FleetTrend.IntegrationTests.Reports;

/// <summary>What is asked for twice is answered with what is there, made once whoever is killed when, and followed to its end.</summary>
[Collection(SharedPostgres.Name)]
public sealed class AskedTwiceTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Fleet = "*";
    private ApiServer server = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-A01") });
        await server.Reports.SetRecipientsAsync(new SetRecipientsRequest { Base = Fleet, Addresses = { "director@shop.example" } });
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task A_second_request_for_a_period_is_answered_with_the_reports_that_are_there()
    {
        var checkedOnly = await server.Reports.RequestReportAsync(new RequestReportRequest { RequestId = "first", ValidateOnly = true });
        Assert.Equal((null, ReportRequestState.Queued), (checkedOnly.RequestTime, checkedOnly.Request.State));
        var first = await RequestAsync("first");
        Assert.Equal((ReportRequestState.Queued, 0), (first.State, first.Reports.Count));
        await Job().RunAsync(default);
        var done = await FollowAsync("first");
        Assert.Equal((ReportRequestState.Done, 1, ""), (done.State, done.AttemptCount, done.Failure));
        Assert.Equal([("North", false), (Fleet, false)], done.Reports.Select(r => (r.Base, r.ExistedBefore)));
        Assert.NotNull(done.EndTime);

        var second = await RequestAsync("second");
        Assert.Equal((ReportRequestState.Done, 0), (second.State, second.AttemptCount));
        Assert.Equal(done.Reports.Select(r => (r.ReportId, true)), second.Reports.Select(r => (r.ReportId, r.ExistedBefore)));
        await Job().RunAsync(default);
        Assert.Equal((2, 1), (await server.CountAsync("reports"), await server.CountAsync("outbox_mails")));
        Assert.Equal(done, await RequestAsync("first")); // the same identifier: the same answer

        var page = await server.Reports.ListReportRequestsAsync(new ListReportRequestsRequest { PageSize = 1 });
        Assert.Equal("second", Assert.Single(page.Requests).RequestId);
        page = await server.Reports.ListReportRequestsAsync(new ListReportRequestsRequest { PageSize = 1, PageToken = page.NextPageToken });
        Assert.Equal(("first", ""), (Assert.Single(page.Requests).RequestId, page.NextPageToken));
    }

    [Fact]
    public async Task A_request_whose_worker_is_killed_is_taken_over_by_one_of_two_and_made_once()
    {
        await RequestAsync("now");
        await RequestAsync("and-again");
        var taken = await server.Services.GetRequiredService<ReportRequests>().TakeAsync(TimeSpan.Zero, default); // and the worker dies
        Assert.Equal("now", taken!.RequestId);
        Assert.Equal(ReportRequestState.Running, (await FollowAsync("now")).State);

        await using var beside = await ApiServer.StartBesideAsync(server);
        await Task.WhenAll(Enumerable.Range(0, 4).Select(i => Task.Run(() => Job(i % 2 == 0 ? server : beside).RunAsync(default))));
        foreach (var id in new[] { "now", "and-again" })
        {
            await Eventually.TrueAsync(async () =>
            {
                await Job().RunAsync(default); // ticks
                return (await FollowAsync(id)).State == ReportRequestState.Done;
            });
        }

        Assert.Equal((2, 1), (await server.CountAsync("reports"), await server.CountAsync("outbox_mails")));
    }

    [Fact]
    public async Task A_request_that_fails_says_why_is_tried_again_and_ends_in_words()
    {
        server.ErrorsExpected = true;
        await ExecuteAsync("alter table reports add constraint no_more check (false) not valid");
        await RequestAsync("doomed");
        await Job().RunAsync(default);
        var failing = await FollowAsync("doomed");
        Assert.Equal((ReportRequestState.Running, 1), (failing.State, failing.AttemptCount));
        Assert.Contains("no_more", failing.Failure, StringComparison.Ordinal);
        for (var attempt = 2; attempt <= 5; attempt++)
        {
            await ExecuteAsync("update report_requests set lease_end_time = clock_timestamp()");
            await Job().RunAsync(default);
        }

        var failed = await FollowAsync("doomed");
        Assert.Equal((ReportRequestState.Failed, 5), (failed.State, failed.AttemptCount));
        Assert.NotNull(failed.EndTime);

        await ExecuteAsync("alter table reports drop constraint no_more");
        await RequestAsync("better");
        await Job().RunAsync(default);
        Assert.Equal((ReportRequestState.Done, ""), ((await FollowAsync("better")).State, (await FollowAsync("better")).Failure));
    }

    [Fact]
    public async Task A_request_that_was_never_made_is_told_so()
    {
        var answer = await Assert.ThrowsAsync<RpcException>(() => FollowAsync("never"));
        Assert.Equal("REPORT_REQUEST_NOT_FOUND", answer.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason);
    }

    [Fact]
    public async Task A_refresh_that_is_asked_for_says_which_one_answers_it()
    {
        await ExecuteAsync("delete from refresh_requests");
        var requests = server.Services.GetRequiredService<RefreshRequests>();
        Assert.Equal(RefreshRequestState.Queued, (await AskAsync(validateOnly: true)).State);
        Assert.Equal(RefreshRequestState.Queued, (await AskAsync()).State);
        Assert.Equal(RefreshRequestState.Joined, (await AskAsync()).State);

        // A lock on the trends holds the refresh between its computing and its publishing.
        Task<DateTimeOffset> running;
        RequestRefreshResponse meanwhile;
        await using (var connection = await server.Database.DataSource.OpenConnectionAsync())
        await using (var held = await connection.BeginTransactionAsync())
        {
            await using var hold = new NpgsqlCommand("lock table trends in exclusive mode", connection, held);
            await hold.ExecuteNonQueryAsync();
            running = Task.Run(() => ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services).RunAsync(default));
            await Eventually.TrueAsync(() => server.Services.GetRequiredService<StartedRefreshes>().AnyAsync(TimeSpan.FromHours(1), default));
            meanwhile = await AskAsync();
            await held.RollbackAsync();
        }

        Assert.Equal(RefreshRequestState.QueuedAfterRunning, meanwhile.State);
        Assert.True((await running) < meanwhile.RequestTime.ToDateTimeOffset());
        Assert.True(await requests.DueAsync(TimeSpan.FromHours(1), TimeSpan.FromHours(1), TimeSpan.FromHours(1), default)); // one more follows
        await ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services).RunAsync(default);
        Assert.False(await requests.DueAsync(TimeSpan.Zero, TimeSpan.Zero, TimeSpan.Zero, default));
        var fresh = (await server.Flags.ListFlagsAsync(new ListFlagsRequest())).Freshness;
        Assert.True(fresh.AsOfTime.ToDateTimeOffset() >= meanwhile.RequestTime.ToDateTimeOffset());
        Assert.False(fresh.RefreshPending);
    }

    [Fact]
    public async Task A_refresh_that_fails_is_told_with_the_results_and_stays_due()
    {
        var refresh = ActivatorUtilities.CreateInstance<TrendRefresh>(server.Services);
        await refresh.RunAsync(default);
        await AskAsync();
        await ExecuteAsync("alter table trends add constraint no_more check (false) not valid");
        var job = ActivatorUtilities.CreateInstance<RefreshTrendsJob>(
            server.Services, refresh, new ScheduleSettings(), new NoJobs());
        await Assert.ThrowsAnyAsync<NpgsqlException>(() => job.RunWhenDueAsync(default));
        var fresh = (await server.Trends.ListRatesAsync(new ListRatesRequest())).Freshness;
        Assert.True(fresh.RefreshPending);
        Assert.NotNull(fresh.RefreshFailedTime);

        await ExecuteAsync("alter table trends drop constraint no_more");
        await job.RunWhenDueAsync(default);
        fresh = (await server.Trends.ListRatesAsync(new ListRatesRequest())).Freshness;
        Assert.Equal((false, null), (fresh.RefreshPending, fresh.RefreshFailedTime));
    }

    private async Task<ReportRequest> RequestAsync(string id) =>
        (await server.Reports.RequestReportAsync(new RequestReportRequest { RequestId = id })).Request;

    private async Task<ReportRequest> FollowAsync(string id) =>
        (await server.Reports.ListReportRequestsAsync(new ListReportRequestsRequest { RequestId = id })).Requests.Single();

    private async Task<RequestRefreshResponse> AskAsync(bool validateOnly = false) =>
        await server.Trends.RequestRefreshAsync(new RequestRefreshRequest { ValidateOnly = validateOnly });

    private RequestedReportsJob Job(ApiServer? at = null)
    {
        var services = (at ?? server).Services;
        return ActivatorUtilities.CreateInstance<RequestedReportsJob>(
            services, ActivatorUtilities.CreateInstance<ReportWriter>(services, ActivatorUtilities.CreateInstance<TrendRefresh>(services)));
    }

    private async Task ExecuteAsync(string statement)
    {
        await using var command = server.Database.DataSource.CreateCommand(statement);
        await command.ExecuteNonQueryAsync();
    }

    /// <summary>Nothing has changed since the refresh before, so that no job of a type group is wanted.</summary>
    private sealed class NoJobs : IBackgroundJobClient
    {
        public string Create(Job job, IState state) => throw new InvalidOperationException("A job was started.");

        public bool ChangeState(string jobId, IState state, string expectedState) => throw new InvalidOperationException("A job was changed.");
    }
}

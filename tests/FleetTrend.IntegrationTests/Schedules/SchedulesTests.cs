using FleetTrend.Contracts.V1;
using FleetTrend.Hosting.Configuration;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.IntegrationTests.Trends;
using FleetTrend.Results.Refreshes;
using FleetTrend.Store.Retention;
using FleetTrend.Worker.Jobs;
using FleetTrend.Worker.Reports;
using Google.Rpc;
using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;

namespace FleetTrend.IntegrationTests.Schedules;

/// <summary>Schedules: what is due is made once, whoever was down, paused or asked twice, and nobody gets a report twice.</summary>
[Collection(SharedPostgres.Name)]
public sealed class SchedulesTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Fleet = "Whole fleet";
    private const string North = "Base North";
    private const string Director = "director@shop.example";

    /// <summary>Monday 2 March 2026, 05:00 UTC: an hour before the shipped slot.</summary>
    private readonly SetClock clock = new(new DateTimeOffset(2026, 3, 2, 5, 0, 0, TimeSpan.Zero));
    private ScheduleSettings settings = new();
    private ApiServer server = null!;
    private ReportScheduleService.ReportScheduleServiceClient schedules = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres, configure: builder => builder.Services.AddSingleton<TimeProvider>(clock));
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-A01") });
        schedules = new(server.Channel);
        await TickAsync();
    }

    public async Task DisposeAsync() => await server.DisposeAsync();

    [Fact]
    public async Task The_fleet_and_every_base_have_a_schedule_from_the_start_and_are_due_by_it()
    {
        var shipped = await ListAsync();
        Assert.Equal([(Fleet, "*"), (North, "North")], shipped.Select(s => (s.Schedule.Name, s.Schedule.Base)));
        Assert.All(shipped, s => Assert.Equal(
            (Weekday.Monday, "06:00", "UTC", true, At(2, 6)),
            (s.Schedule.Weekday, s.Schedule.Time, s.Schedule.TimeZone, s.FollowsSettings, s.NextDueTime.ToDateTimeOffset())));
        await TickAsync();
        Assert.Equal(0, await server.CountAsync("reports")); // not yet

        await server.Reports.SetRecipientsAsync(new SetRecipientsRequest { Base = "*", Addresses = { Director } });
        await TickAsync(At(2, 6));
        await TickAsync(At(2, 6).AddSeconds(10));
        Assert.Equal(["*", "North"], (await ReportsAsync()).Select(r => r.Base).Order(StringComparer.Ordinal));
        var report = (await ReportsAsync()).Single(r => r.Base == "*");
        Assert.Equal((23, 1), (report.PeriodStartDate.Day, report.PeriodEndDate.Day)); // 23 February to 1 March
        Assert.Equal(1, await server.CountAsync("outbox_mails"));
        var fleet = (await ListAsync())[0];
        Assert.Equal((At(9, 6), At(2, 6), report.ReportId), (fleet.NextDueTime.ToDateTimeOffset(), fleet.LastDueTime.ToDateTimeOffset(), fleet.LastReportId));
        Assert.Equal((Director, DeliveryState.Owed), (fleet.Deliveries.Single().Recipient, fleet.Deliveries.Single().State));
    }

    [Fact]
    public async Task A_worker_that_was_down_for_weeks_makes_the_newest_report_late_and_once()
    {
        await server.Reports.SetRecipientsAsync(new SetRecipientsRequest { Base = "*", Addresses = { Director } });
        await TickAsync(At(18, 9));
        await TickAsync(At(18, 9).AddSeconds(10));
        var fleet = (await ListAsync())[0];
        Assert.Equal(
            (At(16, 6), At(18, 9), At(23, 6)),
            (fleet.LastDueTime.ToDateTimeOffset(), fleet.LastMadeTime.ToDateTimeOffset(), fleet.NextDueTime.ToDateTimeOffset()));
        Assert.Equal((9, 15), Days((await ReportsAsync()).Single(r => r.Base == "*")));
        Assert.Equal(1, await server.CountAsync("outbox_mails"));
    }

    [Fact]
    public async Task A_paused_schedule_makes_nothing_and_makes_up_for_nothing()
    {
        var paused = Schedule("Weekend", Weekday.Saturday);
        paused.Paused = true;
        Assert.Null((await SetAsync(paused)).NextDueTime);
        foreach (var name in new[] { Fleet, North })
            await schedules.DeleteReportScheduleAsync(new DeleteReportScheduleRequest { Name = name });
        await TickAsync(At(17, 6));
        Assert.Equal(0, await server.CountAsync("reports"));
        paused.Paused = false;
        Assert.Equal(At(21, 6), (await SetAsync(paused)).NextDueTime.ToDateTimeOffset());
        await TickAsync(At(17, 7));
        Assert.Equal(0, await server.CountAsync("reports"));
        await TickAsync(At(21, 6));
        Assert.Equal((14, 20), Days(Assert.Single(await ReportsAsync())));
        Assert.Equal(["Weekend"], (await ListAsync()).Select(s => s.Schedule.Name)); // what was removed is not shipped again
    }

    [Fact]
    public async Task Who_stands_in_two_schedules_of_one_scope_gets_a_period_once()
    {
        await server.Reports.SetRecipientsAsync(new SetRecipientsRequest { Base = "*", Addresses = { Director } });
        await SetAsync(Schedule("Again", Weekday.Monday, "Director@Shop.example", "lead@shop.example"));
        await SetAsync(Schedule("Thursdays", Weekday.Thursday, Director));
        await TickAsync(At(2, 6));
        Assert.Equal([Director, "lead@shop.example"], await MailedAsync());
        await TickAsync(At(5, 6)); // other days are another period
        Assert.Equal([Director, Director, "lead@shop.example"], await MailedAsync());
        Assert.Equal([(23, 1), (26, 4)], (await ReportsAsync()).Where(r => r.Base == "*").Select(Days).Order());
        Assert.Equal(
            ["Director@Shop.example", Director, "lead@shop.example"],
            Assert.Single((await server.Reports.ListRecipientsAsync(new ListRecipientsRequest())).Recipients).Addresses);
        var cleared = await server.Reports.SetRecipientsAsync(new SetRecipientsRequest { Base = "*", Addresses = { "lead@shop.example" } });
        Assert.Equal(["lead@shop.example"], cleared.Recipients.Addresses);
        Assert.Equal([Fleet, "Again", "Thursdays"], (await ListAsync()).Where(s => s.Schedule.Base == "*").Select(s => s.Schedule.Name)
            .OrderBy(n => n is Fleet ? 0 : 1).ThenBy(n => n, StringComparer.Ordinal)); // all stay
        Assert.Equal(1, (await ListAsync()).Sum(s => s.Schedule.Recipients.Count));
    }

    [Fact]
    public async Task Sending_now_twice_and_beside_the_due_tick_mails_each_recipient_once()
    {
        await server.Reports.SetRecipientsAsync(new SetRecipientsRequest { Base = "*", Addresses = { Director } });
        var asked = await schedules.SendReportNowAsync(new SendReportNowRequest { Name = Fleet });
        Assert.True(asked.Schedule.SendPending);
        await TickAsync(); // an hour before it is due: the period before
        Assert.Equal((16, 22), Days(Assert.Single(await ReportsAsync())));
        Assert.False((await ListAsync())[0].SendPending);
        await SendAsync();
        Assert.Equal([Director], await MailedAsync());

        clock.Now = At(2, 6);
        await schedules.SendReportNowAsync(new SendReportNowRequest { Name = Fleet });
        await using (var beside = await ApiServer.StartBesideAsync(server))
            await Task.WhenAll(Enumerable.Range(0, 4).Select(i => Task.Run(() => Job(i % 2 == 0 ? server : beside).RunAsync(default))));
        await Eventually.TrueAsync(async () =>
        {
            await TickAsync();
            return await server.CountAsync("reports where base = '*'") == 2;
        });
        await SendAsync();
        Assert.Equal([Director, Director], await MailedAsync()); // one of each period
        await server.Reports.SetRecipientsAsync(new SetRecipientsRequest { Base = "*", Addresses = { Director, "late@shop.example" } });
        await SendAsync();
        Assert.Equal([Director, Director, "late@shop.example"], await MailedAsync()); // who came later gets it now
        Assert.Equal(2, await server.CountAsync("reports where base = '*'"));
    }

    [Fact]
    public async Task A_mail_that_was_removed_as_old_is_not_sent_again()
    {
        await server.Reports.SetRecipientsAsync(new SetRecipientsRequest { Base = "*", Addresses = { Director } });
        await SendAsync();
        await ExecuteAsync("update outbox_mails set sent_time = clock_timestamp() - interval '3 days'");
        await server.Services.GetRequiredService<OldRows>().RemoveAsync(
            new RetentionLimits(TimeSpan.FromDays(2), TimeSpan.FromDays(2), TimeSpan.FromDays(2)), default);
        await SendAsync();
        Assert.Empty(await MailedAsync());
        Assert.Equal(DeliveryState.NoLongerKept, (await ListAsync())[0].Deliveries.Single().State);
    }

    [Fact]
    public async Task A_preview_sends_and_stores_nothing_and_says_who_would_get_it()
    {
        await server.Services.RefreshAsync();
        await server.Reports.SetRecipientsAsync(new SetRecipientsRequest { Base = "*", Addresses = { Director } });
        var before = await PreviewAsync();
        Assert.Equal(("", 16, 22), (before.ReportId, before.PeriodStartDate.Day, before.PeriodEndDate.Day));
        Assert.Contains("THE WHOLE FLEET", before.Text, StringComparison.Ordinal);
        Assert.Equal([Director], before.Recipients);
        Assert.Equal((0, 0), (await server.CountAsync("reports"), await server.CountAsync("outbox_mails")));
        await SendAsync();
        var after = await PreviewAsync();
        Assert.Equal((Assert.Single(await ReportsAsync()).ReportId, before.Subject), (after.ReportId, after.Subject));
        Assert.Empty(after.Recipients);
    }

    [Fact]
    public async Task A_type_group_has_reports_of_its_own()
    {
        var ofGroup = Schedule("Trainers", Weekday.Monday, "trainers@shop.example");
        (ofGroup.Base, ofGroup.TypeGroup) = ("", ShopCards.TypeGroup);
        await SetAsync(ofGroup);
        await TickAsync(At(2, 6));
        var report = Assert.Single((await server.Reports.ListReportsAsync(new ListReportsRequest { TypeGroup = ShopCards.TypeGroup })).Reports);
        Assert.Equal(("*", ShopCards.TypeGroup), (report.Base, report.TypeGroup));
        Assert.Contains(ShopCards.TypeGroup, report.Subject, StringComparison.Ordinal);
        Assert.Equal("", Assert.Single((await server.Reports.ListReportsAsync(new ListReportsRequest { Base = "*" })).Reports).TypeGroup);
        Assert.True((await server.Reports.ReproduceReportAsync(new ReproduceReportRequest { ReportId = report.ReportId })).Same);
        Assert.Equal(["trainers@shop.example"], await MailedAsync());
    }

    [Fact]
    public async Task One_that_fails_says_why_keeps_no_other_back_and_is_made_a_minute_later()
    {
        server.ErrorsExpected = true;
        await ExecuteAsync("alter table reports add constraint not_north check (base <> 'North') not valid");
        await TickAsync(At(2, 6));
        Assert.Equal("*", Assert.Single(await ReportsAsync()).Base);
        Assert.Contains("not_north", (await ListAsync()).Single(s => s.Schedule.Name == North).Failure, StringComparison.Ordinal);
        await ExecuteAsync("alter table reports drop constraint not_north");
        await TickAsync(At(2, 6).AddSeconds(59));
        Assert.Single(await ReportsAsync());
        await TickAsync(At(2, 6).AddSeconds(60));
        Assert.Equal(2, (await ReportsAsync()).Count);
        Assert.Equal("", (await ListAsync()).Single(s => s.Schedule.Name == North).Failure);
    }

    [Fact]
    public async Task A_schedule_follows_the_settings_until_its_time_is_changed()
    {
        var north = (await ListAsync()).Single(s => s.Schedule.Name == North).Schedule;
        north.Recipients.Add("north@shop.example");
        Assert.True((await SetAsync(north)).FollowsSettings); // only its recipients changed
        var fleet = (await ListAsync())[0].Schedule;
        fleet.Time = "07:30";
        Assert.False((await SetAsync(fleet)).FollowsSettings);
        settings = new ScheduleSettings
        {
            TimeZone = TimeZoneInfo.FindSystemTimeZoneById("America/New_York"),
            WeeklyReport = new WeeklySlot(DayOfWeek.Tuesday, new TimeOnly(5, 0)),
        };
        await TickAsync();
        var now = await ListAsync();
        Assert.Equal(
            [("*", Weekday.Monday, "07:30", "UTC"), ("North", Weekday.Tuesday, "05:00", "America/New_York")],
            now.Select(s => (s.Schedule.Base, s.Schedule.Weekday, s.Schedule.Time, s.Schedule.TimeZone)));
        Assert.Equal(At(3, 10), now[1].NextDueTime.ToDateTimeOffset()); // five hours behind UTC
    }

    [Fact]
    public async Task A_base_that_lost_its_last_aircraft_gets_no_report_until_somebody_asks()
    {
        var moved = ShopCards.Aircraft("ZZ-A01");
        moved.Key.Revision = 2;
        moved.Aircraft.Assignments[0].Base = "South";
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = moved });
        await TickAsync(At(2, 6));
        Assert.Equal(["*"], (await ReportsAsync()).Select(r => r.Base)); // South has its schedule from now on
        Assert.Equal([Fleet, North, "Base South"], (await ListAsync()).Select(s => s.Schedule.Name));
        await TickAsync(At(9, 6));
        Assert.Equal(["*", "*", "South"], (await ReportsAsync()).Select(r => r.Base).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("name", "", "schedule.name", "FIELD_REQUIRED")]
    [InlineData("base", "Nort", "schedule.base", "BASE_NOT_FOUND")]
    [InlineData("base", "", "schedule.base", "FIELD_REQUIRED")]
    [InlineData("type_group", "trainer", "schedule.base", "FIELD_NOT_ALLOWED")]
    [InlineData("time", "6:00 am", "schedule.time", "PATTERN_MISMATCH")]
    [InlineData("time_zone", "Somewhere", "schedule.time_zone", "PATTERN_MISMATCH")]
    [InlineData("time_zone", "Eastern Standard Time", "schedule.time_zone", "PATTERN_MISMATCH")]
    public async Task What_no_schedule_can_be_is_refused_by_field(string field, string value, string refused, string reason)
    {
        var schedule = Schedule("Mine", Weekday.Monday, Director);
        ReportSchedule.Descriptor.FindFieldByName(field).Accessor.SetValue(schedule, value);
        var info = await RefusalAsync(() => SetAsync(schedule));
        Assert.Equal((refused, reason), (info.Metadata["field"], info.Reason));
    }

    [Fact]
    public async Task A_name_that_no_schedule_has_is_told_so_with_the_nearest()
    {
        foreach (var call in new Func<Task>[]
        {
            async () => await schedules.SendReportNowAsync(new SendReportNowRequest { Name = "Whole flet" }),
            async () => await schedules.DeleteReportScheduleAsync(new DeleteReportScheduleRequest { Name = "Whole flet" }),
            async () => await schedules.GetReportPreviewAsync(new GetReportPreviewRequest { Name = "Whole flet" }),
        })
        {
            var info = await RefusalAsync(call);
            Assert.Equal(("REPORT_SCHEDULE_NOT_FOUND", Fleet), (info.Reason, info.Metadata["nearest"]));
        }
    }

    [Fact]
    public async Task What_is_only_checked_is_not_written()
    {
        await schedules.SetReportScheduleAsync(new SetReportScheduleRequest { Schedule = Schedule("Mine", Weekday.Friday), ValidateOnly = true });
        await schedules.DeleteReportScheduleAsync(new DeleteReportScheduleRequest { Name = Fleet, ValidateOnly = true });
        Assert.True((await schedules.SendReportNowAsync(new SendReportNowRequest { Name = Fleet, ValidateOnly = true })).Schedule.SendPending);
        Assert.Equal([(Fleet, false), (North, false)], (await ListAsync()).Select(s => (s.Schedule.Name, s.SendPending)));
    }

    private static DateTimeOffset At(int day, int hour) => new(2026, 3, day, hour, 0, 0, TimeSpan.Zero);

    private static (int First, int Last) Days(Report report) => (report.PeriodStartDate.Day, report.PeriodEndDate.Day);

    private static ReportSchedule Schedule(string name, Weekday day, params string[] recipients) => new()
    {
        Name = name,
        Base = "*",
        Weekday = day,
        Time = "06:00",
        TimeZone = "UTC",
        Recipients = { recipients },
    };

    private static async Task<ErrorInfo> RefusalAsync(Func<Task> call) =>
        (await Assert.ThrowsAsync<RpcException>(call)).GetRpcStatus()!.GetDetail<ErrorInfo>()!;

    private WeeklyReportJob Job(ApiServer? at = null)
    {
        var services = (at ?? server).Services;
        var writer = ActivatorUtilities.CreateInstance<ReportWriter>(services, ActivatorUtilities.CreateInstance<TrendRefresh>(services));
        return ActivatorUtilities.CreateInstance<WeeklyReportJob>(services, writer, settings, clock);
    }

    private Task TickAsync(DateTimeOffset? now = null)
    {
        clock.Now = now ?? clock.Now;
        return Job().RunAsync(default);
    }

    private async Task SendAsync()
    {
        await schedules.SendReportNowAsync(new SendReportNowRequest { Name = Fleet });
        await TickAsync();
    }

    private async Task<IReadOnlyList<ReportScheduleState>> ListAsync() =>
        (await schedules.ListReportSchedulesAsync(new ListReportSchedulesRequest())).Schedules;

    private async Task<ReportScheduleState> SetAsync(ReportSchedule schedule) =>
        (await schedules.SetReportScheduleAsync(new SetReportScheduleRequest { Schedule = schedule })).Schedule;

    private async Task<GetReportPreviewResponse> PreviewAsync() => await schedules.GetReportPreviewAsync(new GetReportPreviewRequest { Name = Fleet });

    private async Task<IReadOnlyList<Report>> ReportsAsync() => (await server.Reports.ListReportsAsync(new ListReportsRequest())).Reports;

    private async Task<IReadOnlyList<string>> MailedAsync() =>
        [.. (await server.Reports.ListMailsAsync(new ListMailsRequest())).Mails.Select(m => m.Recipient.ToLowerInvariant()).Order(StringComparer.Ordinal)];

    private async Task ExecuteAsync(string statement)
    {
        await using var command = server.Database.DataSource.CreateCommand(statement);
        await command.ExecuteNonQueryAsync();
    }
}

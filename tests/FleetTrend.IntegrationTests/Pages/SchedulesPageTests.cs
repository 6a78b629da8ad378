using System.Net;
using FleetTrend.Contracts.V1;
using FleetTrend.IntegrationTests.Intake;
using FleetTrend.IntegrationTests.Trends;
using FleetTrend.Store.Outbox;
using FleetTrend.Store.People;
using FleetTrend.Store.Reports;
using FleetTrend.Store.Schedules;
using Microsoft.Extensions.DependencyInjection;
using ReportSchedule = FleetTrend.Store.Schedules.ReportSchedule;

namespace FleetTrend.IntegrationTests.Pages;

/// <summary>The page of the schedules: what is due, what became of each mail, and the forms that change them.</summary>
[Collection(SharedPostgres.Name)]
public sealed class SchedulesPageTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string Path = "/schedules";
    private const string Form = "form[action='/schedules?handler=Set']";

    private ApiServer server = null!;
    private Browser director = null!;

    public async Task InitializeAsync()
    {
        server = await ApiServer.StartAsync(postgres);
        await ShopCards.RegisterAsync(server);
        await server.Intake.PushRecordAsync(new PushRecordRequest { Record = ShopCards.Aircraft("ZZ-A01") });
        await server.Reports.SetRecipientsAsync(new SetRecipientsRequest { Base = "*", Addresses = { "director@shop.example" } });
        director = await Browser.SignedInAsync(server, "director", PersonRole.Director);
    }

    public async Task DisposeAsync()
    {
        director.Dispose();
        await server.DisposeAsync();
    }

    [Fact]
    public async Task A_schedule_is_added_changed_paused_resumed_and_removed_in_the_browser()
    {
        Assert.NotNull((await director.PageAsync("/")).QuerySelector($"nav a[href='{Path}']"));
        await SendAsync(Form, "set", new()
        {
            ["schedule.name"] = "Lead mechanic",
            ["schedule.base"] = "base North",
            ["schedule.weekday"] = "Friday",
            ["schedule.time"] = "15:30",
            ["schedule.time_zone"] = "Europe/London",
            ["schedule.recipients"] = "lead@shop.example\r\nnight@shop.example",
        });
        var added = await FindAsync("Lead mechanic");
        Assert.Equal(
            ("North", DayOfWeek.Friday, new TimeOnly(15, 30), "Europe/London", "lead@shop.example night@shop.example"),
            (added!.Scope.Base, added.Slot.Day, added.Slot.Time, added.TimeZone, string.Join(' ', added.Recipients)));
        var page = await director.PageAsync(Path);
        var section = page.QuerySelector($"section[aria-labelledby='schedule-{added.ScheduleId}']")!;
        Assert.Contains("Friday 15:30, Europe/London", section.TextContent);
        Assert.Contains(", 15:30", section.QuerySelector("dl")!.TextContent);
        Assert.Equal(["lead@shop.example", "night@shop.example"], section.QuerySelectorAll("tbody th").Select(c => c.TextContent));
        Assert.All(section.QuerySelectorAll("tbody td"), c => Assert.Equal("gets the next one", c.TextContent));

        page = await director.PageAsync("/schedules?change=Lead%20mechanic");
        Assert.Equal("Lead mechanic", page.QuerySelector($"{Form} [name='schedule.name']")!.GetAttribute("value"));
        Assert.Equal("base North", page.QuerySelector($"{Form} [name='schedule.base'] option[selected]")!.GetAttribute("value"));
        Assert.Equal("lead@shop.example\nnight@shop.example", page.QuerySelector($"{Form} textarea")!.TextContent.Trim());

        await PostAsync("Pause", "Lead mechanic");
        Assert.True((await FindAsync("Lead mechanic"))!.IsPaused);
        Assert.Contains("paused", (await director.PageAsync(Path)).QuerySelector($"section[aria-labelledby='schedule-{added.ScheduleId}'] dl")!.TextContent);
        await PostAsync("Resume", "Lead mechanic");
        Assert.Equal(added.NextDueTime, (await FindAsync("Lead mechanic"))!.NextDueTime);
        await PostAsync("Send", "Lead mechanic");
        Assert.NotNull((await FindAsync("Lead mechanic"))!.SendAskedTime);
        await PostAsync("Remove", "Lead mechanic");
        Assert.Null(await FindAsync("Lead mechanic"));
    }

    [Fact]
    public async Task What_is_refused_stands_beside_its_field_and_what_was_typed_stays()
    {
        using var refused = await director.SendAsync(Path, Form, new()
        {
            ["schedule.name"] = "Mine",
            ["schedule.base"] = "*",
            ["schedule.weekday"] = "Monday",
            ["schedule.time"] = "6 am",
            ["schedule.time_zone"] = "Nowhere",
            ["schedule.recipients"] = "<lead>",
        });
        Assert.Equal(HttpStatusCode.BadRequest, refused.StatusCode);
        var page = await Browser.ReadAsync(refused);
        Assert.Contains("must be a 24-hour time, such as 06:00; got \"6 am\"", page.GetElementById("set-schedule-time-error")!.TextContent);
        Assert.Contains("must be an IANA time zone", page.GetElementById("set-schedule-time_zone-error")!.TextContent);
        Assert.Contains("got \"<lead>\"", page.GetElementById("set-schedule-recipients-error")!.TextContent);
        Assert.Equal("<lead>", page.QuerySelector($"{Form} textarea")!.TextContent.Trim());
        Assert.All(page.QuerySelectorAll("[role=alert] a"), a => Assert.NotNull(page.QuerySelector(a.GetAttribute("href")!)));
        Assert.Null(await FindAsync("Mine"));
    }

    [Fact]
    public async Task What_became_of_each_mail_stands_beside_its_recipient_and_a_reader_sees_no_address()
    {
        await server.Reports.SetRecipientsAsync(new SetRecipientsRequest
        {
            Base = "*",
            Addresses = { "a@shop.example", "b@shop.example", "c@shop.example", "d@shop.example" },
        });
        var fleet = (await FindAsync("Whole fleet"))!;
        var report = await SaveAsync("a@shop.example", "b@shop.example", "c@shop.example");
        await server.Services.GetRequiredService<DueSchedules>().OwedAsync([fleet.ScheduleId], report, default);
        var outbox = server.Services.GetRequiredService<OutboxStore>();
        var mails = (await outbox.TakeDueAsync(10, TimeSpan.FromHours(1), default)).ToDictionary(m => m.Recipient[..1], StringComparer.Ordinal);
        await outbox.MarkSentAsync(mails["a"].MailId, default);
        await outbox.GiveUpAsync(mails["b"].MailId, 1, "550 no such <user>", default);
        await outbox.MarkFailedAsync(mails["c"].MailId, 1, "busy", DateTimeOffset.UtcNow.AddHours(1), default);

        var cells = (await director.PageAsync(Path)).QuerySelectorAll("section tbody td").Select(c => c.TextContent).ToList();
        Assert.StartsWith("sent on ", cells[0], StringComparison.Ordinal);
        Assert.StartsWith("given up on ", cells[1], StringComparison.Ordinal);
        Assert.EndsWith("after 1 attempt; the mail server said \u201c550 no such <user>\u201d", cells[1], StringComparison.Ordinal);
        Assert.EndsWith("1 attempt so far; the mail server said \u201cbusy\u201d", cells[2], StringComparison.Ordinal);
        Assert.Equal("gets the next one", cells[3]);

        using var reader = await Browser.SignedInAsync(server, "reader", PersonRole.Reader);
        var page = await reader.PageAsync(Path);
        Assert.Contains("Recipients: 1 from the next one on, 1 owed, 1 sent, 1 given up.", page.QuerySelector("main")!.TextContent);
        Assert.DoesNotContain("@", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Null(page.QuerySelector("main form"));
        Assert.DoesNotContain("@", (await reader.PageAsync("/schedules/preview?name=Whole%20fleet")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        using (var mail = await reader.GetAsync("/schedules/mail?name=Whole%20fleet"))
            Assert.Equal(HttpStatusCode.NotFound, mail.StatusCode);
    }

    [Fact]
    public async Task A_preview_shows_the_mail_and_stores_nothing()
    {
        Assert.Contains("No refresh has run yet", (await director.PageAsync("/schedules/preview?name=Whole%20fleet")).QuerySelector("main")!.TextContent);
        await server.Services.RefreshAsync();
        var page = await director.PageAsync("/schedules/preview?name=Whole%20fleet");
        Assert.Contains("director@shop.example", page.QuerySelector("dl")!.TextContent);
        using (var mail = await director.GetAsync(page.QuerySelector("iframe")!.GetAttribute("src")!))
        {
            Assert.Equal(HttpStatusCode.OK, mail.StatusCode);
            Assert.Contains("the whole fleet", await mail.Content.ReadAsStringAsync(), StringComparison.Ordinal);
            Assert.Contains("sandbox", string.Join(' ', mail.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        }

        Assert.Equal(0, await server.CountAsync("reports"));
        using var none = await director.GetAsync("/schedules/preview?name=nobody");
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    private Task<ReportSchedule?> FindAsync(string name) => server.Services.GetRequiredService<ScheduleStore>().FindAsync(name, default);

    private async Task SendAsync(string form, string done, Dictionary<string, string> typed)
    {
        using var taken = await director.SendAsync(Path, form, typed);
        Assert.Equal((HttpStatusCode.Redirect, $"/schedules?done={done}"), (taken.StatusCode, taken.Headers.Location!.OriginalString));
    }

    private async Task PostAsync(string handler, string name)
    {
        var address = $"/schedules?handler={handler}";
        Assert.NotNull((await director.PageAsync(Path)).QuerySelector($"form[action='{address}'], button[formaction='{address}']"));
        using var taken = await director.PostAsync(address, new() { ["name"] = name }, await director.MarkAsync(Path));
        Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
        Assert.NotNull((await director.PageAsync(taken.Headers.Location!.OriginalString)).QuerySelector("[role=status]"));
    }

    private async Task<long> SaveAsync(params string[] recipients) => (await server.Services.GetRequiredService<ReportStore>().SaveAsync(
        new StoredReport
        {
            Base = "*",
            PeriodStart = new DateOnly(2026, 3, 2),
            PeriodEnd = new DateOnly(2026, 3, 8),
            AsOf = new DateTimeOffset(2026, 3, 9, 6, 0, 0, TimeSpan.Zero),
            CodeVersion = "t",
            ParametersJson = "{}",
            Subject = "Synthetic",
            Text = "Synthetic",
            Html = "Synthetic",
            Plots = new Dictionary<string, byte[]>(StringComparer.Ordinal),
            MessageIdSeed = "t",
        },
        recipients, default)).ReportId;
}

using FleetTrend.Api.Pages.Forms;
using FleetTrend.Api.Schedules;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake;
using FleetTrend.Records.Schedules;
using FleetTrend.Store.Fleet;
using FleetTrend.Store.Schedules;
using Microsoft.AspNetCore.Mvc;
using DeliveryState = FleetTrend.Store.Schedules.DeliveryState;
using ReportSchedule = FleetTrend.Store.Schedules.ReportSchedule;

namespace FleetTrend.Api.Pages.Schedules;

/// <summary>Schedules of reports, what became of their last reports, and the forms that change, pause, send and remove them.</summary>
internal sealed class SchedulesModel(ScheduleStore schedules, ScheduleAnswers answers, FleetDirectory fleet, FleetNames names) : FormPage
{
    /// <summary>Name of the form that adds and changes.</summary>
    public const string Set = "set";

    /// <summary>Name of the form that sends now.</summary>
    public const string Send = "send";

    /// <summary>Name of the form that pauses.</summary>
    public const string Pause = "pause";

    /// <summary>Name of the form that resumes.</summary>
    public const string Resume = "resume";

    /// <summary>Name of the form that removes.</summary>
    public const string Remove = "remove";

    private const string OfBase = "base ";
    private const string OfTypeGroup = "type-group ";

    /// <summary>The schedules, each with what became of its last report.</summary>
    public IReadOnlyList<(ReportSchedule Schedule, IReadOnlyList<DeliveryState> Deliveries)> Schedules { get; private set; } = [];

    /// <summary>The schedule that the form changes; null where it adds one.</summary>
    public ReportSchedule? Changed { get; private set; }

    /// <summary>Whether the reader sees addresses.</summary>
    public bool SeesAddresses => May(ScheduleAnswers.Listing);

    private IReadOnlyList<(string Value, string Words)> scopes = [];

    /// <summary>The link that fills the form with a schedule.</summary>
    public static string ChangeLink(ReportSchedule schedule) => $"/schedules?change={Uri.EscapeDataString(schedule.Name)}#set";

    /// <summary>The page that shows what a schedule would send.</summary>
    public static string PreviewLink(ReportSchedule schedule) => $"/schedules/preview?name={Uri.EscapeDataString(schedule.Name)}";

    /// <summary>Shows them.</summary>
    public Task<IActionResult> OnGetAsync([FromQuery] string? change, CancellationToken ct) => ShowAsync(change, ct);

    /// <summary>Adds a schedule, or changes one.</summary>
    public async Task<IActionResult> OnPostSetAsync(CancellationToken ct)
    {
        var scope = Typed("schedule.base");
        var asked = new Contracts.V1.ReportSchedule
        {
            Name = Typed("schedule.name"),
            Base = scope == ReportScope.AllBases ? scope : After(scope, OfBase),
            TypeGroup = After(scope, OfTypeGroup),
            Weekday = Enum.TryParse<Weekday>(Typed("schedule.weekday"), out var day) ? day : default,
            Time = Typed("schedule.time"),
            TimeZone = Typed("schedule.time_zone"),
            Paused = Typed("schedule.paused") == "true",
            Recipients = { Typed("schedule.recipients").Split(['\n', ',', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries) },
        };
        return await SetAsync(Set, asked, Typed("change"), ct);
    }

    /// <summary>Pauses one.</summary>
    public Task<IActionResult> OnPostPauseAsync(CancellationToken ct) => PauseAsync(Pause, isPaused: true, ct);

    /// <summary>Resumes one.</summary>
    public Task<IActionResult> OnPostResumeAsync(CancellationToken ct) => PauseAsync(Resume, isPaused: false, ct);

    /// <summary>Sends the last report of one now.</summary>
    public async Task<IActionResult> OnPostSendAsync(CancellationToken ct)
    {
        var request = new SendReportNowRequest { Name = Typed("name") };
        return await AnswerAsync(Send, ScheduleAnswers.Sending, caller => answers.SendAsync(request, caller, ct)) is null
            ? await ShowAsync(null, ct) : LocalRedirect($"/schedules?done={Send}");
    }

    /// <summary>Removes one.</summary>
    public async Task<IActionResult> OnPostRemoveAsync(CancellationToken ct)
    {
        var request = new DeleteReportScheduleRequest { Name = Typed("name") };
        return await AnswerAsync(Remove, ScheduleAnswers.Removing, caller => answers.RemoveAsync(request, caller, ct)) is null
            ? await ShowAsync(null, ct) : LocalRedirect($"/schedules?done={Remove}");
    }

    /// <summary>The fields of the form that adds and changes.</summary>
    public IReadOnlyList<FormField> Fields()
    {
        var now = Changed?.ToWire();
        return
        [
            Of("name", "Name", "1 to 80 characters. The name of another schedule changes that one.", now?.Name),
            Of("base", "What it is about", "", now is null ? null : Value(Changed!.Scope)) with { Choices = scopes },
            Of("weekday", "Day", "The report covers the seven days before.", now?.Weekday.ToString() ?? nameof(Weekday.Monday)) with
            {
                Choices = [.. Enum.GetValues<Weekday>().Where(d => d != default).Select(d => (d.ToString(), d.ToString()))],
            },
            Of("time", "Time", "From 00:00 to 23:59, by the clock there.", now?.Time ?? "06:00"),
            Of("time_zone", "Time zone", "As the IANA database names it, such as America/Chicago.", now?.TimeZone ?? FirstZone),
            Of("recipients", "Who gets it", "Mail addresses, one a line, up to 50. With nobody the report is made and stands here.",
                now is null ? null : string.Join('\n', now.Recipients)) with { IsLong = true, IsOptional = true },
        ];
    }

    private string FirstZone => Schedules.Count > 0 ? Schedules[0].Schedule.TimeZone : "UTC";

    private static string After(string text, string start) => text.StartsWith(start, StringComparison.Ordinal) ? text[start.Length..] : "";

    private static string Value(ReportScope scope) =>
        scope switch { { Base: { } home } => OfBase + home, { TypeGroup: { } typeGroup } => OfTypeGroup + typeGroup, _ => ReportScope.AllBases };

    private FormField Of(string name, string label, string hint, string? value)
    {
        var field = Field(Set, $"schedule.{name}", label, hint);
        return Posted == Set ? field : field with { Value = value ?? "" };
    }

    private async Task<IActionResult> PauseAsync(string form, bool isPaused, CancellationToken ct)
    {
        var name = Typed("name");
        var asked = name.Length == 0 ? null : (await schedules.FindAsync(name.Replace('\0', ' '), ct))?.ToWire();
        if (asked is null)
        {
            await AnswerAsync<ReportSchedule>(form, ScheduleAnswers.Setting, async _ => await answers.UnknownAsync(name, ct));
            return await ShowAsync(null, ct);
        }

        asked.Paused = isPaused;
        return await SetAsync(form, asked, null, ct);
    }

    private async Task<IActionResult> SetAsync(string form, Contracts.V1.ReportSchedule asked, string? change, CancellationToken ct)
    {
        var taken = await AnswerAsync(form, ScheduleAnswers.Setting, async caller =>
        {
            var answer = await answers.SetAsync(new SetReportScheduleRequest { Schedule = asked }, caller, ct);
            // The form has one field for all addresses, and one for base and type group.
            return answer.Refusals.Count == 0 ? answer : Answer<ReportSchedule>.Refuse(
                [.. answer.Refusals.Select(r => new Refusal(FieldOf(r.Field), r.Value, r.Reason, r.Rule) { IsBare = r.IsBare, Nearest = r.Nearest })]);
        });
        return taken is null ? await ShowAsync(change, ct) : LocalRedirect($"/schedules?done={form}");
    }

    private static string FieldOf(string field) => field == "schedule.type_group" ? "schedule.base" : field.Split('[')[0];

    private async Task<IActionResult> ShowAsync(string? change, CancellationToken ct)
    {
        var shown = new List<(ReportSchedule, IReadOnlyList<DeliveryState>)>();
        foreach (var schedule in await schedules.ListAsync(ct))
            shown.Add((schedule, await schedules.DeliveriesAsync(schedule, ct)));
        Schedules = shown;
        Changed = shown.Select(s => s.Item1).FirstOrDefault(s => s.Name == change);
        var bases = (await fleet.ReadBasesAsync([], ct)).Union(shown.Select(s => s.Item1.Scope.Base).OfType<string>(), StringComparer.Ordinal);
        scopes =
        [
            (ReportScope.AllBases, "The whole fleet"),
            .. bases.Order(StringComparer.Ordinal).Select(b => (OfBase + b, $"Base {b}")),
            .. (await names.ReadAsync(NameKind.TypeGroup, ct)).Select(g => (OfTypeGroup + g, $"Type group {g}")),
        ];
        return Page();
    }
}

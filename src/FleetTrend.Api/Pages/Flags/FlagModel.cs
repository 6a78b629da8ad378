using System.Globalization;
using FleetTrend.Api.Flags;
using FleetTrend.Api.Pages.Forms;
using FleetTrend.Contracts.V1;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Intake;
using FleetTrend.Records.Flags;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Flags;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using FleetTrend.Trends.Flags;
using Microsoft.AspNetCore.Mvc;
using FlagState = FleetTrend.Records.Flags.FlagState;

namespace FleetTrend.Api.Pages.Flags;

/// <summary>One flag: what it says, who answered, and the forms to acknowledge and to close it.</summary>
internal sealed class FlagModel(FlagStore flags, FlagAnswers answers, ResultReader results, HostSettings settings) : FormPage
{
    /// <summary>Name of a form.</summary>
    public const string Acknowledge = "acknowledge";

    /// <summary>Name of a form.</summary>
    public const string Close = "close";

    /// <summary>Name of a form.</summary>
    public const string Act = "act";

    /// <summary>Name of a form.</summary>
    public const string Reopen = "reopen";

    /// <summary>Name of a form.</summary>
    public const string Assign = "assign";

    private const int MostSteps = 1_000;

    /// <summary>The steps of its life, earliest first.</summary>
    public IReadOnlyList<StoredStep> Steps { get; private set; } = [];

    /// <summary>The flag; null where there is none of that number.</summary>
    public StoredFlag? Flag { get; private set; }

    /// <summary>What it says; null where there is none.</summary>
    public ProposedFlag? Said { get; private set; }

    /// <summary>The moment of the latest refresh; null before the first.</summary>
    public DateTimeOffset? AsOf { get; private set; }

    /// <summary>Its card as HTML; empty where it is closed.</summary>
    public string CardHtml { get; private set; } = "";

    /// <summary>Shows a flag.</summary>
    public Task<IActionResult> OnGetAsync(long id, CancellationToken ct) => ShowAsync(id, ct);

    /// <summary>Acknowledges it.</summary>
    public async Task<IActionResult> OnPostAcknowledgeAsync(long id, CancellationToken ct)
    {
        var request = new AcknowledgeFlagRequest
        {
            FlagId = id.ToString(CultureInfo.InvariantCulture),
            AcknowledgedBy = Reader.Name,
            Comment = Typed("comment"),
            Etag = Typed("etag"),
        };
        return await AnswerAsync(Acknowledge, FlagAnswers.Acknowledging, caller => answers.AcknowledgeAsync(request, caller, ct)) is null
            ? await ShowAsync(id, ct)
            : LocalRedirect($"/flags/{request.FlagId}?done={Acknowledge}");
    }

    /// <summary>Closes it.</summary>
    public async Task<IActionResult> OnPostCloseAsync(long id, CancellationToken ct)
    {
        var request = new CloseFlagRequest
        {
            FlagId = id.ToString(CultureInfo.InvariantCulture),
            ClosedBy = Reader.Name,
            Comment = Typed("comment"),
            Etag = Typed("etag"),
        };
        return await AnswerAsync(Close, FlagAnswers.Closing, caller => answers.CloseAsync(request, caller, ct)) is null
            ? await ShowAsync(id, ct)
            : LocalRedirect($"/flags/{request.FlagId}?done={Close}");
    }

    /// <summary>Says what was done about it.</summary>
    public async Task<IActionResult> OnPostActAsync(long id, CancellationToken ct)
    {
        var unread = new List<Refusal>();
        var request = new ActOnFlagRequest
        {
            FlagId = id.ToString(CultureInfo.InvariantCulture),
            ActedBy = Reader.Name,
            Comment = Typed("comment"),
            Etag = Typed("etag"),
        };
        if (DateOnly.TryParseExact(Typed("action_date"), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            request.ActionDate = day.ToWire();
        else
            unread.Add(new Refusal("action_date", Typed("action_date"), Reasons.DateInvalid, "must be a date such as 2026-02-03"));
        if (double.TryParse(Typed("time_in_service_hours"), NumberStyles.Float, CultureInfo.InvariantCulture, out var hours))
            request.TimeInServiceHours = hours;
        else if (Typed("time_in_service_hours").Length > 0)
            unread.Add(new Refusal("time_in_service_hours", Typed("time_in_service_hours"), Reasons.TypeMismatch, "must be a number with a point for decimals"));
        return await AnswerAsync(
            Act, FlagAnswers.ActingOn,
            async caller => unread.Count > 0 ? Answer<StoredFlag>.Refuse(unread) : await answers.ActOnAsync(request, caller, ct)) is null
            ? await ShowAsync(id, ct)
            : LocalRedirect($"/flags/{request.FlagId}?done={Act}");
    }

    /// <summary>Takes its closing back.</summary>
    public async Task<IActionResult> OnPostReopenAsync(long id, CancellationToken ct)
    {
        var request = new ReopenFlagRequest
        {
            FlagId = id.ToString(CultureInfo.InvariantCulture),
            ReopenedBy = Reader.Name,
            Comment = Typed("comment"),
            Etag = Typed("etag"),
        };
        return await AnswerAsync(Reopen, FlagAnswers.Reopening, caller => answers.ReopenAsync(request, caller, ct)) is null
            ? await ShowAsync(id, ct)
            : LocalRedirect($"/flags/{request.FlagId}?done={Reopen}");
    }

    /// <summary>Gives it to somebody.</summary>
    public async Task<IActionResult> OnPostAssignAsync(long id, CancellationToken ct)
    {
        var request = new AssignFlagRequest
        {
            FlagId = id.ToString(CultureInfo.InvariantCulture),
            Assignee = Typed("assignee"),
            AssignedBy = Reader.Name,
            Etag = Typed("etag"),
        };
        return await AnswerAsync(Assign, FlagAnswers.Assigning, caller => answers.AssignAsync(request, caller, ct)) is null
            ? await ShowAsync(id, ct)
            : LocalRedirect($"/flags/{request.FlagId}?done={Assign}");
    }

    /// <summary>Whether a form is shown: where its step leads on from where the flag stands, and where what was typed comes back.</summary>
    public bool Shows(string form) => Posted == form || (Flag is { } flag && form switch
    {
        Acknowledge => FlagLife.PersonMay(flag.State, FlagState.Acknowledged),
        Act => FlagLife.PersonMay(flag.State, FlagState.ActedOn),
        Close => FlagLife.PersonMay(flag.State, FlagState.Closed),
        Reopen => FlagLife.PersonMay(flag.State, FlagState.Reopened),
        _ => FlagLife.IsUnsettled(flag.State),
    });

    /// <summary>The etag that a form sends: of the flag as it was read. A form that comes back keeps its own, so that sending it again answers
    /// only what was seen.</summary>
    public string Etag(string form) => Posted == form && Refusals.All(r => r.Reason != Reasons.FlagChanged) ? Typed("etag") : FlagMessages.EtagOf(Flag!);

    /// <summary>The card, with the numbers of its aircraft as they are now.</summary>
    private async Task<string> CardAsync(StoredFlag flag, ProposedFlag said, PublishedTrends trends, CancellationToken ct)
    {
        IReadOnlyList<Analysis> wanted = said.Registration is null ? [] : [Analyses.Fleet];
        var now = await results.AssembleAsync(trends, wanted, new ResultFilter { Registration = said.Registration }, ct);
        return ReportHtml.Render(FlagSection.Compose(now, flag.ToLine(), new Uri(settings.PublicUrl + "/")));
    }

    private async Task<IActionResult> ShowAsync(long id, CancellationToken ct)
    {
        Flag = await flags.GetAsync(id, ct);
        if (Flag is null)
        {
            if (NotLetIn is null)
                Response.StatusCode = StatusCodes.Status404NotFound;
            return Page();
        }

        Said = Flag.Said();
        Steps = (await flags.ListStepsAsync(id, MostSteps, null, ct)).Items;
        if (await results.LatestAsync(ct) is { } trends)
        {
            AsOf = trends.AsOf;
            if (FlagLife.IsUnsettled(Flag.State))
                CardHtml = await CardAsync(Flag, Said, trends, ct);
        }

        return Page();
    }
}

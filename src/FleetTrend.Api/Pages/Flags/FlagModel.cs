using System.Globalization;
using FleetTrend.Api.Flags;
using FleetTrend.Api.Pages.Forms;
using FleetTrend.Contracts.V1;
using FleetTrend.Hosting.Configuration;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Flags;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using FleetTrend.Trends.Flags;
using Microsoft.AspNetCore.Mvc;
using FlagState = FleetTrend.Store.Flags.FlagState;

namespace FleetTrend.Api.Pages.Flags;

/// <summary>One flag: what it says, who answered, and the forms to acknowledge and to close it.</summary>
internal sealed class FlagModel(FlagStore flags, FlagAnswers answers, ResultReader results, HostSettings settings) : FormPage
{
    /// <summary>Name of a form.</summary>
    public const string Acknowledge = "acknowledge";

    /// <summary>Name of a form.</summary>
    public const string Close = "close";

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
            AcknowledgedBy = Typed("acknowledged_by"),
            Comment = Typed("comment"),
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
            ClosedBy = Typed("closed_by"),
            Comment = Typed("comment"),
        };
        return await AnswerAsync(Close, FlagAnswers.Closing, caller => answers.CloseAsync(request, caller, ct)) is null
            ? await ShowAsync(id, ct)
            : LocalRedirect($"/flags/{request.FlagId}?done={Close}");
    }

    /// <summary>Whether a form is shown: while the flag is not closed, and where what was typed comes back.</summary>
    public bool Shows(string form) => Flag?.State != FlagState.Closed || Posted == form;

    /// <summary>The card, with the numbers of its aircraft as they are now.</summary>
    private async Task<string> CardAsync(StoredFlag flag, ProposedFlag said, PublishedTrends trends, CancellationToken ct)
    {
        IReadOnlyList<Analysis> wanted = said.Registration is null ? [] : [Analyses.Fleet, Analyses.Standings, Analyses.LocationStandings];
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
        if (await results.LatestAsync(ct) is { } trends)
        {
            AsOf = trends.AsOf;
            if (Flag.State != FlagState.Closed)
                CardHtml = await CardAsync(Flag, Said, trends, ct);
        }

        return Page();
    }
}

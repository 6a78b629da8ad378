using FleetTrend.Intake;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Trends.LookLists;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.Aircraft;

/// <summary>The look list of an aircraft by itself, to be printed and taken along.</summary>
internal sealed class LookListModel(ResultReader results, LookListReader lookLists, NameFilters names) : PageModel
{
    /// <summary>Its mark, as it is written.</summary>
    public string Registration { get; private set; } = "";

    /// <summary>What the mark is refused with; null where an aircraft has it.</summary>
    public Refusal? UnknownMark { get; private set; }

    /// <summary>The list; null before the first refresh that knows the aircraft.</summary>
    public LookList? List { get; private set; }

    /// <summary>What to look at first, in a sentence.</summary>
    public string Statement { get; private set; } = "";

    /// <summary>The list as HTML.</summary>
    public string ListHtml { get; private set; } = "";

    /// <summary>Reads what the page shows.</summary>
    public async Task<IActionResult> OnGetAsync(string registration, CancellationToken ct)
    {
        Registration = registration.ToUpperInvariant();
        UnknownMark = await names.OfRegistrationAsync(Registration, ct);
        if (UnknownMark is not null)
            Response.StatusCode = StatusCodes.Status404NotFound;
        else if (await results.LatestAsync(ct) is { } published && await lookLists.ReadAsync(published, Registration, ct) is { } list)
            (List, Statement, ListHtml) = (list, LookListWords.Statement(list), ReportHtml.Render(LookListSection.Compose(list, published.AsOf)));
        return Page();
    }
}

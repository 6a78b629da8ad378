using FleetTrend.Store.Reports;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.Reports;

/// <summary>One stored report, as it was mailed.</summary>
public sealed class ReportModel(ReportStore reports) : PageModel
{
    /// <summary>The report; null where there is none of that number.</summary>
    public StoredReport? Report { get; private set; }

    /// <summary>Reads the report.</summary>
    /// <param name="id">Its number.</param>
    /// <param name="ct">Cancels.</param>
    public async Task OnGetAsync(long id, CancellationToken ct)
    {
        Report = await reports.GetAsync(id, ct);
        if (Report is null) Response.StatusCode = StatusCodes.Status404NotFound;
    }
}

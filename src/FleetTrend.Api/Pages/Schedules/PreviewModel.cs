using FleetTrend.Api.Pages.Forms;
using FleetTrend.Api.Schedules;
using FleetTrend.Store.Schedules;
using Microsoft.AspNetCore.Mvc;

namespace FleetTrend.Api.Pages.Schedules;

/// <summary>What a schedule would send now. Nothing is sent and nothing is stored.</summary>
internal sealed class PreviewModel(ScheduleStore schedules, ReportPreviews previews) : FormPage
{
    /// <summary>The call for which the page stands.</summary>
    public const string Previewing = "/fleettrend.v1.ReportScheduleService/GetReportPreview";

    /// <summary>The schedule; null where there is none of that name.</summary>
    public ReportSchedule? Schedule { get; private set; }

    /// <summary>What it would send; null before the first refresh.</summary>
    public ReportPreview? Preview { get; private set; }

    /// <summary>The mail by itself.</summary>
    public string MailAddress => $"/schedules/mail?name={Uri.EscapeDataString(Schedule?.Name ?? "")}";

    /// <summary>Shows it.</summary>
    public async Task<IActionResult> OnGetAsync([FromQuery] string? name, CancellationToken ct)
    {
        Schedule = string.IsNullOrEmpty(name) || name.Contains('\0') ? null : await schedules.FindAsync(name, ct);
        if (Schedule is null)
            Response.StatusCode = StatusCodes.Status404NotFound;
        else if (May(Previewing))
            Preview = await previews.ReadAsync(Schedule, ct);
        return Page();
    }
}

using FleetTrend.Api.Pages.Flags;
using FleetTrend.Records.Flags;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Flags;
using FleetTrend.Store.Reports;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages;

/// <summary>The first page: what stands first in the latest report of the whole fleet, the fleet now, and the archive.</summary>
public sealed class IndexModel(ResultReader results, ReportStore reports, FlagStore flags, FreshnessReader freshness) : PageModel
{
    private const int MostFlags = 500;
    private const int MostReports = 60;
    private const int LinesPerPage = 50;

    // A refresh runs every night; two hours of grace.
    private static readonly TimeSpan StaleAfter = TimeSpan.FromHours(26);

    /// <summary>The latest trends; null before the first refresh.</summary>
    public TrendSnapshot? Trends { get; private set; }

    /// <summary>How fresh the trends are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>How old the trends are, in words.</summary>
    public string Age { get; private set; } = "";

    /// <summary>Whether the trends are older than a night.</summary>
    public bool IsStale { get; private set; }

    /// <summary>Day of the newest inspection of an aircraft that flies.</summary>
    public DateOnly? NewestInspection { get; private set; }

    /// <summary>Day of the newest hours of an aircraft that flies.</summary>
    public DateOnly? NewestHours { get; private set; }

    /// <summary>The latest report of the whole fleet; null before the first.</summary>
    public StoredReport? Report { get; private set; }

    /// <summary>What stands first in that report, as HTML.</summary>
    public string ReportHtml { get; private set; } = "";

    /// <summary>The fleet table of the latest trends as HTML.</summary>
    public string FleetHtml { get; private set; } = "";

    /// <summary>Flags that nobody has answered.</summary>
    public int UnansweredFlags { get; private set; }

    /// <summary>Flags that somebody has acknowledged, and that are not closed.</summary>
    public int AcknowledgedFlags { get; private set; }

    /// <summary>Reports, newest first.</summary>
    public IReadOnlyList<ReportSummary> Archive { get; private set; } = [];

    /// <summary>The latest report of each base.</summary>
    public IReadOnlyList<ReportSummary> LatestPerBase { get; private set; } = [];

    /// <summary>Page of the fleet table, from 1.</summary>
    public int FleetPage { get; private set; } = 1;

    /// <summary>Pages of the fleet table.</summary>
    public int FleetPages { get; private set; }

    /// <summary>Reads what the page shows.</summary>
    /// <param name="page">Page of the fleet table, from 1.</param>
    /// <param name="ct">Cancels.</param>
    public async Task OnGetAsync([FromQuery(Name = "fleet")] int page, CancellationToken ct)
    {
        Freshness = await freshness.ReadAsync(ct);
        if (await results.LatestAsync(ct) is not { } published) return;
        Trends = await results.AssembleAsync(published, [Analyses.Fleet], new ResultFilter(), ct);
        var age = TimeProvider.System.GetUtcNow() - Trends.AsOf;
        Age = AgeWords.Describe(age);
        IsStale = age > StaleAfter;
        var flying = Trends.Fleet.Where(l => l.RetiredDate is null).ToList();
        NewestInspection = flying.Max(l => l.LatestInspectionDate);
        NewestHours = flying.Max(l => l.LatestDate);
        var open = await flags.ListAsync(null, null, MostFlags, null, ct);
        UnansweredFlags = open.Items.Count(flag => flag.State is not (FlagState.Acknowledged or FlagState.ActedOn));
        AcknowledgedFlags = open.Items.Count - UnansweredFlags;
        FleetPages = (flying.Count + LinesPerPage - 1) / LinesPerPage;
        FleetPage = Math.Clamp(page, 1, Math.Max(1, FleetPages));
        var shown = Trends with
        {
            Fleet = [.. flying.Skip((FleetPage - 1) * LinesPerPage)
            .Take(LinesPerPage), .. Trends.Fleet.Where(l => l.RetiredDate is not null)]
        };
        var fleet = FleetSection.Compose(shown, [.. open.Items.Select(flag => flag.ToLine())]);
        FleetHtml = FleetTrend.Reports.Html.ReportHtml.Render(fleet with { Name = "fleet-now", Heading = "Fleet now" });
        Report = await reports.LatestAsync(ReportPages.WholeFleet, ct);
        if (Report is not null) ReportHtml = ReportPages.RenderOpening(Report);
        Archive = (await reports.ListAsync(null, MostReports, null, ct)).Items;
        LatestPerBase = [.. Archive
            .Where(r => r.Base != ReportPages.WholeFleet)
            .GroupBy(r => r.Base, StringComparer.Ordinal)
            .Select(g => g.MaxBy(r => r.PeriodEnd)!)
            .OrderBy(r => r.Base, StringComparer.Ordinal)];
    }
}

using FleetTrend.Hosting.Configuration;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Flags;
using FleetTrend.Records.Schedules;
using FleetTrend.Reports.Pictures;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Flags;
using FleetTrend.Store.Reports;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages;

/// <summary>The first page: what stands first in the latest report of the whole fleet, and the archive.</summary>
public sealed class IndexModel(ResultReader results, ReportStore reports, FlagStore flags, FreshnessReader freshness, HostSettings settings) : PageModel
{
    private const int MostFlags = 500;
    private const int MostReports = 60;

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

    /// <summary>The latest report of the whole fleet; null before the first.</summary>
    public StoredReport? Report { get; private set; }

    /// <summary>What stands first in that report, as HTML.</summary>
    public string ReportHtml { get; private set; } = "";

    /// <summary>The fleet at a glance, as HTML; null where no aircraft flies.</summary>
    public string? StripHtml { get; private set; }

    /// <summary>Flags that nobody has answered.</summary>
    public int UnansweredFlags { get; private set; }

    /// <summary>Flags that somebody has acknowledged, and that are not closed.</summary>
    public int AcknowledgedFlags { get; private set; }

    /// <summary>Reports, newest first.</summary>
    public IReadOnlyList<ReportSummary> Archive { get; private set; } = [];

    /// <summary>The latest report of each base.</summary>
    public IReadOnlyList<ReportSummary> LatestPerBase { get; private set; } = [];

    /// <summary>Reads what the page shows.</summary>
    /// <param name="ct">Cancels.</param>
    public async Task OnGetAsync(CancellationToken ct)
    {
        Freshness = await freshness.ReadAsync(ct);
        if (await results.LatestAsync(ct) is not { } published) return;
        Trends = await results.AssembleAsync(published, [Analyses.Fleet, Analyses.OpenFindings], new ResultFilter(), ct);
        var age = TimeProvider.System.GetUtcNow() - Trends.AsOf;
        Age = AgeWords.Describe(age);
        IsStale = age > StaleAfter;
        var open = await flags.ListAsync(null, null, MostFlags, null, ct);
        UnansweredFlags = open.Items.Count(flag => flag.State is not (FlagState.Acknowledged or FlagState.ActedOn));
        AcknowledgedFlags = open.Items.Count - UnansweredFlags;
        StripHtml = FleetStrip.Draw(Tails(Trends, open.Items));
        Report = await reports.LatestAsync(ReportScope.WholeFleet, ct);
        if (Report is not null) ReportHtml = ReportPages.RenderOpening(Report, settings.Notice);
        Archive = (await reports.ListAsync(null, MostReports, null, ct)).Items;
        LatestPerBase = [.. Archive
            .Where(r => r.Base != ReportScope.AllBases)
            .GroupBy(r => r.Base, StringComparer.Ordinal)
            .Select(g => g.MaxBy(r => r.PeriodEnd)!)
            .OrderBy(r => r.Base, StringComparer.Ordinal)];
    }

    private static IReadOnlyList<StripTail> Tails(TrendSnapshot trends, IReadOnlyList<StoredFlag> open)
    {
        var leaks = trends.OpenFindings.Where(f => f.Condition == Condition.LeakTrace)
            .CountBy(f => f.Registration, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
        var calls = open.Select(f => f.Proposal.Registration).OfType<string>().CountBy(r => r, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
        return
        [
            .. trends.Fleet.Where(l => l.RetiredDate is null).OrderBy(l => l.Registration, StringComparer.Ordinal).Select(l => new StripTail(
                l.Registration, leaks.GetValueOrDefault(l.Registration), l.HoursSinceInspection,
                trends.Parameters.LookIntervalHoursOf(l.TypeGroup, kind: ""), calls.GetValueOrDefault(l.Registration))),
        ];
    }
}

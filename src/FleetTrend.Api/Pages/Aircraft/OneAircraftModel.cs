using FleetTrend.Api.Pages.Flags;
using FleetTrend.Intake;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Pictures;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Flags;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using FleetTrend.Trends.LookLists;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.Aircraft;

/// <summary>One aircraft: what to look at when it comes in, what is open, its calls, and what else is known of it.</summary>
internal sealed class OneAircraftModel(
    ResultReader results, LookListReader lookLists, FlagStore flags, FreshnessReader freshness, NameFilters names) : PageModel
{
    private const int MostFlags = 50;

    /// <summary>Its mark, as it is written.</summary>
    public string Registration { get; private set; } = "";

    /// <summary>How fresh the trends are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>What the mark is refused with; null where an aircraft has it.</summary>
    public Refusal? UnknownMark { get; private set; }

    /// <summary>Its look list; null before the first refresh that knows it.</summary>
    public LookList? List { get; private set; }

    /// <summary>What to look at first, in a sentence.</summary>
    public string Statement { get; private set; } = "";

    /// <summary>Where it is, of which type group, and its hours, in a sentence.</summary>
    public string Where { get; private set; } = "";

    /// <summary>What was found along its hours, as SVG; null where there is nothing to draw.</summary>
    public string? Timeline { get; private set; }

    /// <summary>Sections of the page: name and heading.</summary>
    public IReadOnlyList<(string Name, string Heading)> Sections { get; private set; } = [];

    /// <summary>The sections as HTML.</summary>
    public string SectionsHtml { get; private set; } = "";

    /// <summary>Reads what the page shows.</summary>
    public async Task<IActionResult> OnGetAsync(string registration, CancellationToken ct)
    {
        Registration = registration.ToUpperInvariant();
        UnknownMark = await names.OfRegistrationAsync(Registration, ct);
        if (UnknownMark is not null)
        {
            Response.StatusCode = StatusCodes.Status404NotFound;
            return Page();
        }

        Freshness = await freshness.ReadAsync(ct);
        if (await results.LatestAsync(ct) is not { } published || await lookLists.ReadAsync(published, Registration, ct) is not { } list)
            return Page();
        List = list;
        Statement = LookListWords.Statement(list);
        Where = WhereIs(list);
        Timeline = AircraftTimeline.Draw(list);
        List<ReportSection> sections = [.. await ComposeAsync(published, list, ct)];
        Sections = [.. sections.Select(s => (s.Name, s.Heading))];
        SectionsHtml = string.Concat(sections.Select(ReportHtml.Render));
        return Page();
    }

    private async Task<IEnumerable<ReportSection>> ComposeAsync(PublishedTrends published, LookList list, CancellationToken ct)
    {
        var trends = await results.AssembleAsync(
            published,
            [Analyses.Fleet, Analyses.OpenFindings, Analyses.DueLooks, Analyses.FailureChances, Analyses.Silence, Analyses.Quiet],
            new ResultFilter { Registration = list.Registration },
            ct);
        var calls = (await flags.ListAsync(null, list.Registration, MostFlags, null, ct)).Items;
        List<ReportSection> sections = [];
        if (trends.Silences.Count > 0)
            sections.Add(SilenceSection.Compose(trends));
        sections.Add(OpenFindingsSection.Compose(trends));
        if (calls.Count > 0)
            sections.Add(FlagSection.Compose(trends, "Calls", [.. calls.Select(FlagLines.ToRow)]));
        sections.Add(LookListSection.Compose(list, trends.AsOf));
        if (trends.DueLooks is [var due])
            sections.Add(DueLooksSection.Compose(due, trends.AsOf));
        if (trends.FailureChances is [{ Parts.Count: > 0 } chance])
        {
            var scores = await results.ReadAsync(published, Analyses.Scores, new ResultFilter { TypeGroup = chance.TypeGroup }, ct);
            sections.Add(FailureChancesSection.Compose(chance, trends.AsOf, scores));
        }

        if (trends.Quiet.Count > 0)
            sections.Add(QuietSection.Compose(trends));
        return sections;
    }

    private static string WhereIs(LookList list)
    {
        var hours = list is { LatestHours: { } latest, LatestDate: { } day } ? $"{NumberWords.Hours(latest)} on {NumberWords.Day(day)}" : "no hours on record";
        var inspected = list.LatestInspectionDate is { } inspection ? $"last inspected {NumberWords.Day(inspection)}" : "no inspection on record";
        return $"At {list.Base}, type group {list.TypeGroup}; {hours}; {inspected}.";
    }
}

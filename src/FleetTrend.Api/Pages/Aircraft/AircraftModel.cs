using System.Globalization;
using FleetTrend.Api.Pages.Flags;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Weekly;
using FleetTrend.Results.Reading;
using FleetTrend.Store.Flags;
using FleetTrend.Store.Results;
using FleetTrend.Trends;
using FleetTrend.Trends.Fleet;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace FleetTrend.Api.Pages.Aircraft;

/// <summary>The aircraft that fly, by base, type group and mark; each mark leads to the aircraft's page.</summary>
internal sealed class AircraftModel(ResultReader results, FlagStore flags, FreshnessReader freshness) : PageModel
{
    private const int MostFlags = 500;
    private const int LinesPerPage = 50;

    /// <summary>Orders of the list: as the address calls them, and in words.</summary>
    public static IReadOnlyList<(string Value, string Words)> Orders { get; } =
        [("mark", "By mark"), ("open", "Most open first"), ("recent", "Most found in 90 days first"), ("since", "Longest since an inspection first")];

    /// <summary>How fresh the trends are.</summary>
    public ResultFreshness Freshness { get; private set; } = new(null, null, false, null);

    /// <summary>How many aircraft are listed, in a sentence.</summary>
    public string Statement { get; private set; } = "";

    /// <summary>Every base, by name.</summary>
    public IReadOnlyList<string> Bases { get; private set; } = [];

    /// <summary>Every type group, by name.</summary>
    public IReadOnlyList<string> TypeGroups { get; private set; } = [];

    /// <summary>With what marks begin; empty for all.</summary>
    public string Search { get; private set; } = "";

    /// <summary>The base asked for; empty for all.</summary>
    public string Base { get; private set; } = "";

    /// <summary>The type group asked for; empty for all.</summary>
    public string TypeGroup { get; private set; } = "";

    /// <summary>The order asked for.</summary>
    public string Order { get; private set; } = "";

    /// <summary>The list as HTML.</summary>
    public string FleetHtml { get; private set; } = "";

    /// <summary>The page that is shown, from 1.</summary>
    public int PageNumber { get; private set; } = 1;

    /// <summary>How many pages there are.</summary>
    public int PageCount { get; private set; }

    /// <summary>The address of a page of the same list.</summary>
    public string Link(int number) => string.Create(
        CultureInfo.InvariantCulture,
        $"/aircraft?search={Uri.EscapeDataString(Search)}&base={Uri.EscapeDataString(Base)}&type-group={Uri.EscapeDataString(TypeGroup)}&order={Order}&page={number}");

    /// <summary>Reads what the page shows.</summary>
    /// <param name="search">With what marks begin.</param>
    /// <param name="base">Base.</param>
    /// <param name="typeGroup">Type group.</param>
    /// <param name="order">One of <see cref="Orders"/>; anything else is by mark.</param>
    /// <param name="page">Page, from 1.</param>
    /// <param name="ct">Cancels.</param>
    public async Task OnGetAsync(
        string? search, string? @base, [FromQuery(Name = "type-group")] string? typeGroup, string? order, [FromQuery(Name = "page")] int page, CancellationToken ct)
    {
        (Search, Base, TypeGroup) = (search?.Trim().ToUpperInvariant() ?? "", @base ?? "", typeGroup ?? "");
        Order = Orders.Any(o => o.Value == order) ? order! : Orders[0].Value;
        Freshness = await freshness.ReadAsync(ct);
        if (await results.LatestAsync(ct) is not { } published)
        {
            Statement = "No refresh has run yet, so no aircraft is listed. The first follows the first records by itself.";
            return;
        }

        var trends = await results.AssembleAsync(published, [Analyses.Fleet], new ResultFilter(), ct);
        var flying = trends.Fleet.Where(l => l.RetiredDate is null).ToList();
        Bases = [.. flying.Select(l => l.Base).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        TypeGroups = [.. flying.Select(l => l.TypeGroup).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        var shown = Arrange(flying.Where(IsAsked)).ToList();
        PageCount = (shown.Count + LinesPerPage - 1) / LinesPerPage;
        PageNumber = Math.Clamp(page, 1, Math.Max(1, PageCount));
        Statement = shown.Count == flying.Count
            ? $"{NumberWords.Count(flying.Count)} aircraft fly. A mark leads to what to look at when the aircraft comes in."
            : $"{NumberWords.Count(shown.Count)} of {NumberWords.Count(flying.Count)} aircraft that fly.";
        var open = await flags.ListAsync(null, null, MostFlags, null, ct);
        FleetHtml = ReportHtml.Render(FleetSection.Compose(
            trends with
            {
                Fleet =
                [
                    .. shown.Skip((PageNumber - 1) * LinesPerPage).Take(LinesPerPage),
                    .. trends.Fleet.Where(l => l.RetiredDate is not null && IsAsked(l)),
                ],
            },
            [.. open.Items.Select(flag => flag.ToLine())]) with
        { Name = "fleet-now", Heading = "Fleet now" });
    }

    private bool IsAsked(FleetLine line) => line.Registration.StartsWith(Search, StringComparison.Ordinal)
        && (Base.Length == 0 || line.Base == Base)
        && (TypeGroup.Length == 0 || line.TypeGroup == TypeGroup);

    private IEnumerable<FleetLine> Arrange(IEnumerable<FleetLine> lines) => (Order switch
    {
        "open" => lines.OrderByDescending(l => l.OpenEvents),
        "recent" => lines.OrderByDescending(l => l.RecentEvents),
        "since" => lines.OrderByDescending(l => l.HoursSinceInspection ?? double.PositiveInfinity),
        _ => lines.OrderBy(_ => 0),
    }).ThenBy(l => l.Registration, StringComparer.Ordinal);
}

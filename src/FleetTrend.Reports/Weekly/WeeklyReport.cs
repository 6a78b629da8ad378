using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Html;
using FleetTrend.Reports.Plots;
using FleetTrend.Reports.Text;
using FleetTrend.Trends;

namespace FleetTrend.Reports.Weekly;

/// <summary>A weekly trend report in words and figures, before it is rendered.</summary>
public sealed record WeeklyReport
{
    /// <summary>Subject of the mail: the news, in one line.</summary>
    public required string Subject { get; init; }

    /// <summary>Its title: what it is about and which days.</summary>
    public required string Title { get; init; }

    /// <summary>A line that stands first, or null.</summary>
    public string? Notice { get; init; }

    /// <summary>Where it comes from: as-of moment, freshness of the records, code version; name and value each.</summary>
    public required IReadOnlyList<KeyValuePair<string, string>> Origin { get; init; }

    /// <summary>The sections, most pressing first.</summary>
    public required IReadOnlyList<ReportSection> Sections { get; init; }

    /// <summary>Where the pages are, or null.</summary>
    public Uri? PagesUrl { get; init; }

    /// <summary>The plots, in order.</summary>
    public IReadOnlyList<ReportPlot> Plots =>
        [.. Sections.SelectMany(s => s.Blocks).OfType<Block.Picture>().Select(p => p.Plot)];

    /// <summary>Composes a report. The same snapshots and inputs give the same report.</summary>
    /// <param name="current">Trends as of now.</param>
    /// <param name="previous">Trends as of the report before, or null for the first.</param>
    /// <param name="inputs">Scope, period, flags and links.</param>
    public static WeeklyReport Compose(TrendSnapshot current, TrendSnapshot? previous, ReportInputs inputs)
    {
        ArgumentNullException.ThrowIfNull(current);
        ArgumentNullException.ThrowIfNull(inputs);
        var draft = new ReportDraft(current, previous, inputs);
        var problems = new ProblemsSection(draft);
        // The order is that of reading; sections that have nothing to say are absent.
        ReportSection?[] sections =
        [
            NewsSection.Of(draft, problems),
            TailsSection.Of(draft),
            RepeatsSection.Of(draft),
            PartLivesSection.Of(draft),
            RatesSection.Of(draft),
            FleetSection.Of(draft),
            problems.Section(),
            TooLittleSection.Of(draft),
        ];
        return new WeeklyReport
        {
            Subject = SubjectLine.Of(draft, problems.NewCount),
            Title = ReadingSection.Title(inputs),
            Notice = inputs.Notice,
            Origin = ReadingSection.Origin(draft),
            Sections = [.. sections.OfType<ReportSection>(), ReadingSection.Of(draft), ReadingSection.CautionsSection()],
            PagesUrl = inputs.PagesUrl,
        };
    }

    /// <summary>Renders the report. The same report gives the same bytes.</summary>
    public RenderedReport Render() => new()
    {
        Subject = Subject,
        Text = TextReport.Render(this),
        Html = MailHtml.Render(this),
        PageHtml = ReportHtml.Render(this, PlotPlacement.Inline),
        Plots = Plots.ToDictionary(p => p.PngName, p => p.RenderPng(), StringComparer.Ordinal),
    };
}

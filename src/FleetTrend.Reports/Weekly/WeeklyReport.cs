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

    /// <summary>What it says.</summary>
    public required ReportDocument Document { get; init; }

    /// <summary>The plots, in order.</summary>
    public required IReadOnlyList<ReportPlot> Plots { get; init; }

    /// <summary>Composes a report. The same snapshots and inputs give the same report.</summary>
    /// <param name="current">Trends as of now.</param>
    /// <param name="previous">Trends as of the report before, or null for the first.</param>
    /// <param name="inputs">Scope, period, flags and links.</param>
    public static WeeklyReport Compose(TrendSnapshot current, TrendSnapshot? previous, ReportInputs inputs)
    {
        ArgumentNullException.ThrowIfNull(current);
        ArgumentNullException.ThrowIfNull(inputs);
        if (inputs.Scope.TypeGroup is { } typeGroup)
            (current, previous) = (current.OfTypeGroup(typeGroup), previous?.OfTypeGroup(typeGroup));
        var draft = new ReportDraft(current, previous, inputs);
        var problems = new DataProblemsSection(draft);
        // The order is that of reading; sections that have nothing to say are absent.
        ReportSection?[] sections =
        [
            SilenceSection.Compose(draft),
            NewsSection.Compose(draft, problems),
            OpenFindingsSection.Compose(draft),
            DueLooksSection.Compose(draft),
            FailureChancesSection.Compose(draft),
            SparesSection.Compose(draft),
            TailsSection.Compose(draft),
            LeakErosionsSection.Compose(draft),
            RepairsSection.Compose(draft),
            PositionsSection.Compose(draft),
            ShroudsSection.Compose(draft),
            EffectsSection.Compose(draft),
            ScoresSection.Compose(draft),
            RepeatsSection.Compose(draft),
            QuietSection.Compose(draft),
            LevelsSection.Compose(draft),
            PartLivesSection.Compose(draft),
            PartNumbersSection.Compose(draft),
            GrowthSection.Compose(draft),
            RenewalAgesSection.Compose(draft),
            RatesSection.Compose(draft),
            FleetSection.Compose(draft),
            problems.Section(),
            TooLittleSection.Compose(draft),
        ];
        return new WeeklyReport
        {
            Subject = SubjectLine.Compose(draft, problems.NewCount),
            Document = new ReportDocument
            {
                Title = ReadingSection.Title(inputs),
                Notice = inputs.Notice,
                Caution = Cautions.Brief,
                Origin = ReadingSection.Origin(draft),
                Preview = BriefSections.Preview(draft),
                Brief = BriefSections.Compose(draft, problems.NewCount, problems.OpenCount),
                Sections = [.. sections.OfType<ReportSection>(), ReadingSection.Compose(draft), ReadingSection.CautionsSection()],
                PagesUrl = inputs.PagesUrl,
            },
            Plots = draft.Plots,
        };
    }

    /// <summary>Renders the report. The same report gives the same bytes.</summary>
    public RenderedReport Render() => new()
    {
        Subject = Subject,
        Text = TextReport.Render(Document.ForMail()),
        Html = MailHtml.Render(Document.ForMail()),
        DocumentJson = ReportDocumentJson.Write(Document),
        Plots = Plots.ToDictionary(p => p.PngName, p => p.RenderPng(), StringComparer.Ordinal),
    };
}

using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.Growth;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>Which way kinds of place go: those that move in a report; all of them on a page.</summary>
public static class GrowthSection
{
    private const int MostLines = 3;
    private const int MostRows = 75;
    private const string Heading = "Getting worse or better?";

    /// <summary>Every kind of place of a snapshot, for a page.</summary>
    /// <param name="snapshot">The trends.</param>
    public static ReportSection Compose(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var asOf = $"as of {NumberWords.Moment(snapshot.AsOf)}";
        if (snapshot.Growth.Count == 0)
            return new ReportSection("growth", Heading, [new Block.Paragraph($"Nothing has been found in watched hours, {asOf}.")]);
        List<GrowthTrend> shown = [.. snapshot.Growth.Take(MostRows)];
        List<Block> blocks =
        [
            new Block.Paragraph(GrowthWords.Meaning),
            new Block.Bullets([.. shown.Where(IsTold).DefaultIfEmpty().Select(t => (Line)(t is null ? "No kind of location has findings enough to tell a trend." : GrowthWords.Statement(t)))]),
            new Block.Table(
                $"Kinds of location, {asOf}. Calendar: how many times as often now as two years ago. Hours: growth exponent, one where nothing changes. p allows for all of them",
                [
                    new("Kind"), new("Findings, three years", true), new("Aircraft", true), new("Now beside two years ago", true), new("p", true), new("Verdict"),
                    new("Growth exponent in hours", true), new("p", true), new("Verdict"),
                ],
                [.. shown.Select(t => (Line[])
                [
                    GrowthWords.Subject(t), NumberWords.Count(t.Calendar.Events), NumberWords.Count(t.Calendar.Aircraft), .. Clock(t.Calendar),
                    .. t.Hours is { } hours ? Clock(hours) : ["parts are renewed", "", ""],
                ])]),
        ];
        if (snapshot.Growth.Count > MostRows)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(snapshot.Growth.Count - MostRows)} more. ListGrowth has all of them.", IsAside: true));
        var methods = snapshot.Growth.SelectMany(t => new[] { t.Calendar, t.Hours }).OfType<GrowthClock>()
            .Select(c => c.Growth.Method).Distinct(StringComparer.Ordinal);
        blocks.Add(new Block.Paragraph($"How it is worked out: {string.Join(". ", methods)}. p after Holm 1979.", IsAside: true));
        return new ReportSection("growth", Heading, blocks);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        List<GrowthTrend> told = [.. draft.Current.Growth.Where(t => draft.HasTypeGroup(t.TypeGroup) && IsMoving(t))];
        if (told.Count == 0)
            return null;
        List<Block> blocks = [new Block.Bullets([.. told.Take(MostLines).Select(t => (Line)GrowthWords.Statement(t))])];
        var rest = told.Count - MostLines;
        if (draft.Inputs.PagesUrl is { } pages)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link(rest > 0 ? $"{NumberWords.Count(rest)} more, and all other kinds" : "All other kinds", new Uri(pages, "growth"))), IsAside: true));
        else if (rest > 0)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(rest)} more.", IsAside: true));
        return new ReportSection("growth", Heading, blocks);
    }

    private static bool IsTold(GrowthTrend trend) => trend.Calendar.PValue is not null || trend.Hours?.PValue is not null;

    private static bool IsMoving(GrowthTrend trend) =>
        new[] { trend.Calendar.Finding, trend.Hours?.Finding ?? GrowthFinding.NotTold }.Any(f => f is GrowthFinding.Worse or GrowthFinding.Better);

    private static Line[] Clock(GrowthClock clock) =>
    [
        FigureWords.Format(clock.Growth, FigureStyle.Count).Estimate, clock.AdjustedPValue is { } p ? ChanceWords.Named("p", p, PValueLaw.Approximate) : "",
        GrowthWords.Found(clock.Finding),
    ];
}

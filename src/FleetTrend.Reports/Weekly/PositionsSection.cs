using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.Positions;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>Whether one cylinder or side is worse: what is called in a report; all comparisons with their counts on a page.</summary>
public static class PositionsSection
{
    private const int MostLines = 3;
    private const int MostRows = 75;
    private const string Heading = "Cylinder and side";

    /// <summary>All comparisons of a snapshot, for a page.</summary>
    /// <param name="snapshot">The trends.</param>
    public static ReportSection Compose(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var asOf = $"as of {NumberWords.Moment(snapshot.AsOf)}";
        if (snapshot.Positions.Count == 0)
            return new ReportSection("positions", Heading, [new Block.Paragraph($"No finding is recorded at a cylinder or a side, {asOf}.")]);
        List<Block> blocks = [new Block.Paragraph(PositionWords.Meaning)];
        var (rows, left) = (0, snapshot.Positions.Count);
        foreach (var trend in snapshot.Positions.TakeWhile(t => (rows += t.Positions.Count) <= MostRows))
        {
            left--;
            var by = trend.Sort == PositionSort.Cylinder ? "cylinder" : "side";
            blocks.Add(new Block.SubHeading($"{FirstLetter.Capital(LocationWords.Kind(trend.Title, trend.Kind))}, {ConditionWords.Name(trend.Condition)}, by {by}"));
            blocks.Add(new Block.Paragraph(PositionWords.Verdict(trend)));
            blocks.Add(Counts(trend, asOf));
        }

        if (left > 0)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(left)} more kinds of location and condition. ListPositions has all of them.", IsAside: true));
        blocks.Add(new Block.Paragraph($"How it is worked out: {Methods(snapshot)}", IsAside: true));
        return new ReportSection("positions", Heading, blocks);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        var groups = draft.Fleet.Select(l => l.TypeGroup).ToHashSet(StringComparer.Ordinal);
        List<PositionTrend> told = [.. draft.Current.Positions.Where(t => t.TypeGroups.Any(groups.Contains) && IsCalled(t))];
        if (told.Count == 0)
            return null;
        List<Block> blocks = [new Block.Bullets([.. told.Take(MostLines).Select(t => (Line)PositionWords.Verdict(t))])];
        var rest = told.Count - MostLines;
        if (draft.Inputs.PagesUrl is { } pages)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link(rest > 0 ? $"{NumberWords.Count(rest)} more, with counts" : "The counts behind it", new Uri(pages, "positions"))), IsAside: true));
        else if (rest > 0)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(rest)} more.", IsAside: true));
        return new ReportSection("positions", Heading, blocks);
    }

    private static bool IsCalled(PositionTrend trend) => trend.Positions.Any(p => p.Finding is PositionFinding.MoreOften or PositionFinding.LessOften);

    private static Block.Table Counts(PositionTrend trend, string asOf) => new(
        $"{NumberWords.Count(trend.Aircraft)} aircraft of {string.Join(", ", trend.TypeGroups)}, {asOf}; p allows for all comparisons of the fleet",
        [
            new(trend.Sort == PositionSort.Cylinder ? "Cylinder" : "Side"), new("Findings", true), new("Aircraft with one", true), new("Location-hours", true),
            new(trend.Positions.Count > 2 ? "Beside the others" : "Beside the other", true), new("p", true), new("Verdict"),
        ],
        [.. trend.Positions.Select(p => (Line[])
        [
            FirstLetter.Capital(trend.Sort == PositionSort.Cylinder ? $"No. {p.Name}" : p.Name), NumberWords.Count(p.Findings),
            NumberWords.Count(p.Aircraft), NumberWords.HoursBare(p.ExposureHours),
            p.TimesOthers is { } times ? FigureWords.Format(times, FigureStyle.Times).Estimate : "",
            p.AdjustedPValue is { } adjusted ? ChanceWords.Named("p", adjusted, PValueLaw.Approximate) : "", PositionWords.Found(p),
        ])]);

    private static string Methods(TrendSnapshot snapshot) => string.Join("; ", snapshot.Positions
        .SelectMany(t => t.Positions).Select(p => p.TimesOthers?.Method).OfType<string>().Distinct(StringComparer.Ordinal))
        + ". p: exact permutation of the positions within each aircraft (Pitman 1937), after Holm 1979.";
}

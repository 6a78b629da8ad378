using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.Quiet;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>What is too quiet: the first few questions in a report; all of them with their counts on a page.</summary>
public static class QuietSection
{
    private const int MostQuestions = 3;
    private const string Heading = "Too quiet?";

    /// <summary>All questions of a snapshot with their counts, for a page.</summary>
    /// <param name="snapshot">The trends.</param>
    public static ReportSection Compose(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var asOf = $"as of {NumberWords.Moment(snapshot.AsOf)}";
        List<Quietness> asked = [.. snapshot.Quiet.Where(q => q.IsAsked)];
        List<Block> blocks = [];
        if (asked.Count == 0)
            blocks.Add(new Block.Paragraph($"Nothing to ask, {asOf}. That is no sign that all is well; see the cautions."));
        foreach (var quiet in asked)
            blocks.AddRange(Described(quiet));
        var tooEarly = snapshot.Quiet.Count(q => q is { Verdict: QuietVerdict.TooEarly, Registration: not null });
        if (tooEarly > 0)
        {
            blocks.Add(new Block.Paragraph(
                $"Of {NumberWords.Count(tooEarly, "aircraft", "aircraft")} nothing can be said yet: looked at so little that even no finding at all would not stand out.",
                IsAside: true));
        }

        var method = asked.Select(q => q.Ratio.Method).FirstOrDefault();
        if (method is not null)
            blocks.Add(new Block.Paragraph($"{QuietWords.HowSure} Every number is {asOf}. Found over expected: {method}.", IsAside: true));
        return new ReportSection("quiet", Heading, blocks);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        var questions = draft.Current.Quiet.Where(q => draft.Scope.Covers(q.Base)).SelectMany(q => q.Questions).ToList();
        if (questions.Count == 0) return null;
        List<Block> blocks = [new Block.Bullets([.. questions.Take(MostQuestions).Select(q => (Line)q)])];
        var rest = questions.Count - MostQuestions;
        var more = rest > 0 ? $"{NumberWords.Count(rest)} more, with counts" : "The counts behind it";
        if (draft.Inputs.PagesUrl is { } pages)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link(more, new Uri(pages, "too-quiet"))), IsAside: true));
        else if (rest > 0)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(rest)} more.", IsAside: true));
        return new ReportSection("quiet", Heading, blocks);
    }

    private static IEnumerable<Block> Described(Quietness quiet)
    {
        yield return new Block.SubHeading(quiet.Registration is { } aircraft ? $"{aircraft}, {quiet.Base}" : $"{quiet.Base}: {quiet.TypeGroup}");
        yield return new Block.Bullets([.. quiet.Questions.Select(q => (Line)q)]);
        if (quiet.Verdict == QuietVerdict.Asked)
        {
            var ratio = FigureWords.Format(quiet.Ratio, FigureStyle.Times);
            yield return new Block.Table(
                $"Found, and what the others would have had. Since {NumberWords.Day(quiet.SinceDate!.Value)}: {ratio.OneLine}",
                [new("What"), new("Found", true), new("The others", true)],
                [
                    [$"All since {NumberWords.Day(quiet.SinceDate.Value)}", NumberWords.Count(quiet.Found), NumberWords.Rounded(quiet.Expected)],
                    .. quiet.Classes.Select(c => (IReadOnlyList<Line>)[$"{Name(c)}, in all", NumberWords.Count(c.Found), NumberWords.Rounded(c.Expected)]),
                ]);
        }

        if (quiet.Unexamined.Count > 0)
        {
            yield return new Block.Table(
                "Locations that are not examined",
                [new("Location"), new("Last look"), new("Hours since", true), new("Inspections since", true), new(quiet.Registration is null ? "Elsewhere examined" : "Others examined", true)],
                [.. quiet.Unexamined.Select(l => (IReadOnlyList<Line>)
                    [
                        FirstLetter.Capital(LocationWords.Name(l.Location)), l.LastLookDate is { } day ? NumberWords.Day(day) : "never",
                        NumberWords.HoursBare(l.Hours), NumberWords.Count(l.InspectionCount), $"{NumberWords.Count(l.OthersExamined)} of {NumberWords.Count(l.OthersCount)}",
                    ])]);
        }

        if (quiet.Registration is { } registration)
        {
            yield return new Block.Paragraph(
                Line.Join(new Run.Link("Rows behind it", new Uri($"/v1/trends/evidence?registration={Uri.EscapeDataString(registration)}", UriKind.Relative))), IsAside: true);
        }
    }

    private static string Name(QuietClass of) =>
        FirstLetter.Capital(of.Condition is { } condition ? ConditionWords.Many(condition) : $"failures of {LocationWords.Plural(LocationWords.Kind(null, of.Kind!))}");
}

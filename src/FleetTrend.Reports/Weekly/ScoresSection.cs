using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.FailureChances;
using FleetTrend.Trends.Scores;

namespace FleetTrend.Reports.Weekly;

/// <summary>How right forecasts were: in a report only what is off; every quarter on a page.</summary>
public static class ScoresSection
{
    private const string Heading = "How right were we?";
    private const int MostRows = 75;

    /// <summary>All quarters of a snapshot, for a page.</summary>
    /// <param name="snapshot">The trends.</param>
    public static ReportSection Compose(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        List<Block> blocks = [new Block.Paragraph(ScoreWords.Answer(snapshot.Scores)), new Block.Paragraph(ScoreWords.Meaning)];
        AddChances(blocks, snapshot);
        AddYearBefore(blocks, snapshot);
        AddSpares(blocks, snapshot);
        AddDueLooks(blocks, snapshot);
        AddCalls(blocks, snapshot);
        if (snapshot.Scores.Count > 0)
            blocks.Add(new Block.Paragraph($"How it is judged: {ScoreWords.Method}", IsAside: true));
        return new ReportSection("scores", Heading, blocks);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        var off = Off(draft);
        if (off.Count == 0)
            return null;
        List<Block> blocks = [new Block.Bullets([.. off.Select(o => (Line)FirstLetter.Capital(o))])];
        if (draft.Inputs.PagesUrl is { } pages)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link("Every forecast and what came of it", new Uri(pages, "score"))), IsAside: true));
        return new ReportSection("scores", Heading, blocks);
    }

    /// <summary>Sentences on what is off, of type groups in scope.</summary>
    internal static IReadOnlyList<string> Off(ReportDraft draft) =>
        [.. ScoreWords.ChancesOff(InScope(draft)), .. ScoreWords.SparesOff(InScope(draft))];

    /// <summary>Scores of type groups in scope.</summary>
    internal static IEnumerable<Score> InScope(ReportDraft draft) => draft.Current.Scores.Where(s => draft.HasTypeGroup(s.TypeGroup));

    private static void AddChances(List<Block> blocks, TrendSnapshot snapshot)
    {
        List<Score> told = [.. snapshot.Scores.Where(s => s.Chances is not null)];
        if (told.Count == 0)
            return;
        var confidence = NumberWords.PercentInFull(snapshot.Parameters.Confidence);
        blocks.Add(new Block.SubHeading("Chances before the next look"));
        var newest = ScoreWords.Newest(told);
        if (newest.Count > 0)
            blocks.Add(new Block.Bullets([.. newest.Select(s => (Line)$"{s.TypeGroup}: {ScoreWords.Chance(s.Quarter, s.ChancesOfTwo!)}")]));
        blocks.Add(new Block.Paragraph(ScoreWords.Chances, IsAside: true));
        blocks.Add(new Block.Table(
            $"Failures found at the looks of each quarter beside those expected, as of {NumberWords.Moment(snapshot.AsOf)}; where the chances are right, {confidence} of quarters fit",
            [
                new("Quarter"), new("Type group"), new("Looks", true), new("Expected", true), new("Would fit", true), new("Found", true), new("Fits"),
                new("With the quarter before"),
            ],
            [.. told.Take(MostRows).Select(Row)]));
        foreach (var score in newest.Where(s => s.ChancesOfTwo!.Groups.Count > 0))
        {
            blocks.Add(new Block.Table(
                $"{score.TypeGroup}, last two quarters: looks by the chance foreseen, in groups of equal size; where the chances are right, {confidence} of groups fit",
                [new("Chance"), new("Looks", true), new("Expected", true), new("Would fit", true), new("Found", true), new("Fits")],
                [.. score.ChancesOfTwo!.Groups.Select(g => (Line[])
                [
                    $"{NumberWords.Percent(g.From)} to {NumberWords.Percent(g.To)}", NumberWords.Count(g.Looks), NumberWords.Rounded(g.Expected),
                    $"{NumberWords.Count(g.Lower)} to {NumberWords.Count(g.Upper)}", NumberWords.Count(g.Found), Fits(g.Found, g.Lower, g.Upper),
                ])]));
        }
    }

    /// <summary>Until a verdict on what was kept there is what the records of now say of the year before.</summary>
    private static void AddYearBefore(List<Block> blocks, TrendSnapshot snapshot)
    {
        List<ChanceCalibration> told = [.. snapshot.ChanceCalibrations.Where(c => c.Groups.Count > 0)];
        if (told.Count == 0 || ScoreWords.Newest(snapshot.Scores).Any(s => s.ChancesOfTwo?.IsOff is not null))
            return;
        blocks.Add(new Block.SubHeading("Chances of the year before, worked out again"));
        blocks.Add(new Block.Paragraph("No forecast was kept then. These are the chances that the lives known 52 weeks ago give, by the records of now."));
        blocks.AddRange(told.SelectMany(FailureChancesSection.CameTrue));
    }

    private static void AddSpares(List<Block> blocks, TrendSnapshot snapshot)
    {
        var told = snapshot.Scores.SelectMany(s => s.Spares?.Horizons.Select(h => (Score: s, Horizon: h)) ?? []).ToList();
        if (told.Count == 0)
            return;
        blocks.Add(new Block.SubHeading("Spares"));
        var newest = ScoreWords.NewestOfSpares(snapshot.Scores);
        if (newest.Count > 0)
            blocks.Add(new Block.Bullets([.. newest.Select(s => (Line)$"{s.TypeGroup}: {ScoreWords.Spare(s.SparesOfTwo!)}")]));
        blocks.Add(new Block.Paragraph(ScoreWords.Spares, IsAside: true));
        blocks.Add(new Block.Table(
            $"Forecasts of spares kept in each quarter, and what was needed within their days, as of {NumberWords.Moment(snapshot.AsOf)}; "
                + $"{NumberWords.PercentInFull(snapshot.Parameters.Confidence)} of ranges hold where the forecasts are right",
            [
                new("Quarter"), new("Type group"), new("Days", true), new("Forecasts", true), new("Ranges that held", true), new("Expected", true), new("Would fit", true),
                new("Needed", true), new("With the quarter before"),
            ],
            [.. told.Take(MostRows).Select(t => (Line[])
            [
                t.Score.Quarter.ToString(), t.Score.TypeGroup, NumberWords.Count(t.Horizon.Days),
                NumberWords.Count(t.Horizon.Forecasts) + (t.Horizon.AtLeast > 0 ? $" ({NumberWords.Count(t.Horizon.AtLeast)} more said \"at least\")" : ""),
                NumberWords.Count(t.Horizon.Held), NumberWords.Rounded(t.Horizon.Expected),
                $"{NumberWords.Count(t.Horizon.Lower)} to {NumberWords.Count(t.Horizon.Upper)}", NumberWords.Count(t.Horizon.Needed),
                t.Horizon.Days != t.Score.Spares!.JudgedDays ? "" : t.Score.IsOver ? ScoreWords.Verdict(t.Score.SparesOfTwo?.IsOff) : "not over",
            ])]));
    }

    private static void AddDueLooks(List<Block> blocks, TrendSnapshot snapshot)
    {
        List<Score> told = [.. snapshot.Scores.Where(s => s.DueLooks is { Named: > 0 })];
        if (told.Count == 0)
            return;
        blocks.Add(new Block.SubHeading("Days named for looks"));
        blocks.Add(new Block.Paragraph(ScoreWords.DueLooks, IsAside: true));
        blocks.Add(new Block.Table(
            $"Days in the quarter that were named at its beginning, as of {NumberWords.Moment(snapshot.AsOf)}",
            [
                new("Quarter"), new("Type group"), new("Days named", true), new("Met", true), new("Looked at later", true), new("Not looked at yet", true),
                new("Hours flown within a week of the day", true), new("Days late, median", true),
            ],
            [.. told.Take(MostRows).Select(s => (Line[])
            [
                s.Quarter.ToString(), s.TypeGroup, NumberWords.Count(s.DueLooks!.Named), NumberWords.Count(s.DueLooks.Met), NumberWords.Count(s.DueLooks.Late),
                NumberWords.Count(s.DueLooks.Open), $"{NumberWords.Count(s.DueLooks.WithinWeek)} of {NumberWords.Count(s.DueLooks.Flown)}",
                s.DueLooks.MedianDaysLate is { } late ? NumberWords.Rounded(late) : "",
            ])]));
    }

    private static void AddCalls(List<Block> blocks, TrendSnapshot snapshot)
    {
        List<Score> called = [.. snapshot.Scores.Where(s => s.Calls is { } c && c.Flags + c.Watches > 0)];
        if (called.Count > 0)
        {
            blocks.Add(new Block.SubHeading("Calls"));
            blocks.Add(new Block.Paragraph(ScoreWords.Calls, IsAside: true));
            blocks.Add(new Block.Table(
                $"Flags and watches, and what people made of them, as of {NumberWords.Moment(snapshot.AsOf)}",
                [
                    new("Quarter"), new("Type group"), new("Flags", true), new("Watches", true), new("Acted on", true), new("Helped", true), new("No better", true),
                    new("Closed without an action", true), new("Not settled", true), new("Chance alone", true),
                ],
                [.. called.Take(MostRows).Select(s => CallRow(s, s.Calls!))]));
        }

        List<Score> helped = [.. snapshot.Scores.Where(s => s.Effects is not null)];
        if (helped.Count == 0)
            return;
        blocks.Add(new Block.SubHeading("What helped"));
        blocks.Add(new Block.Table(
            $"Actions on flags by the quarter in which they were found to have helped, and whether that lasted, as of {NumberWords.Moment(snapshot.AsOf)}",
            [new("Quarter"), new("Type group"), new("Helped", true), new("Lasted until now", true), new("Came back", true)],
            [.. helped.Take(MostRows).Select(s => (Line[])
            [
                s.Quarter.ToString(), s.TypeGroup, NumberWords.Count(s.Effects!.Helped), NumberWords.Count(s.Effects.Lasted),
                NumberWords.Count(s.Effects.CameBack),
            ])]));
    }

    private static Line[] CallRow(Score score, CallScore calls) =>
    [
        score.Quarter.ToString(), score.TypeGroup, NumberWords.Count(calls.Flags), NumberWords.Count(calls.Watches), NumberWords.Count(calls.ActedOn),
        NumberWords.Count(calls.Helped), NumberWords.Count(calls.NoBetter), NumberWords.Count(calls.ClosedAsNothing), NumberWords.Count(calls.Open),
        NumberWords.Rounded(calls.ExpectedFalse),
    ];

    private static Line[] Row(Score score)
    {
        var chances = score.Chances!;
        return
        [
            score.IsOver ? score.Quarter.ToString() : $"{score.Quarter}, so far",
            score.TypeGroup,
            NumberWords.Count(chances.Looks),
            NumberWords.Rounded(chances.Expected),
            $"{NumberWords.Count(chances.Lower)} to {NumberWords.Count(chances.Upper)}",
            NumberWords.Count(chances.Found),
            Fits(chances.Found, chances.Lower, chances.Upper),
            score.IsOver ? ScoreWords.Verdict(score.ChancesOfTwo?.IsOff) : "not over",
        ];
    }

    private static string Fits(int found, int lower, int upper) => found > upper ? "more" : found < lower ? "fewer" : "yes";
}

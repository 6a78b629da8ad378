using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.FailureChances;
using FleetTrend.Trends.Scores;

namespace FleetTrend.Reports.Weekly;

/// <summary>Chances before the next look: the few aircraft with the most in a report; all of them, and whether such chances came true, on a page.</summary>
public static class FailureChancesSection
{
    /// <summary>Most aircraft that a page lists.</summary>
    public const int MostRows = 75;

    private const int MostLines = 3;

    // Below that a mail has nothing to act on.
    private const double LeastAny = 0.5;
    private const string Heading = "Chance before the next look";

    /// <summary>The aircraft of a snapshot, for a page.</summary>
    /// <param name="snapshot">The trends; of a large fleet those aircraft with the most are enough.</param>
    public static ReportSection Compose(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var asOf = $"as of {NumberWords.Moment(snapshot.AsOf)}";
        List<FailureChance> told = [.. snapshot.FailureChances.Where(c => c.Parts.Count > 0)];
        List<Block> blocks = [];
        if (told.Count == 0)
        {
            blocks.Add(new Block.Paragraph(snapshot.FailureChances.Count > 0
                ? $"Not enough data, {asOf}: a kind of part has a chance once {snapshot.Parameters.MinimumFailuresForFit} of it have failed and their ages are known."
                : $"No part in service is known, {asOf}."));
        }
        else
        {
            AddOff(blocks, snapshot.Scores);
            blocks.Add(new Block.Paragraph(FailureChanceWords.Meaning));
            blocks.Add(new Block.Table(
                $"Aircraft by failures before the next look, the most first, {asOf}. In brackets {NumberWords.PercentInFull(told[0].Confidence)} limits",
                [new("Aircraft"), new("Base"), new("Failures, in the mean", true), new("Chance of one or more", true), new("Parts", true), new("Most likely"), new("Not in it")],
                [.. told.Take(MostRows).Select(Row)]));
            if (told.Count >= MostRows)
                blocks.Add(new Block.Paragraph($"These {NumberWords.Count(MostRows)} have the most. ListFailureChances has all aircraft.", IsAside: true));
        }

        foreach (var calibration in snapshot.ChanceCalibrations.Where(c => c.Groups.Count > 0))
            blocks.AddRange(CameTrue(calibration));
        AddLaws(blocks, snapshot);
        if (told.Count > 0)
            blocks.Add(new Block.Paragraph($"How it is worked out: {FailureChanceWords.Method}", IsAside: true));
        return new ReportSection("chances", Heading, blocks);
    }

    /// <summary>Every part of one aircraft, for a page.</summary>
    /// <param name="chance">The aircraft.</param>
    /// <param name="asOf">The moment of knowledge.</param>
    /// <param name="scores">How right such chances were.</param>
    public static ReportSection Compose(FailureChance chance, DateTimeOffset asOf, IReadOnlyList<Score> scores)
    {
        ArgumentNullException.ThrowIfNull(chance);
        var left = FailureChanceWords.Left(chance);
        List<Block> blocks = [new Block.Paragraph($"{FailureChanceWords.Statement(chance)}. {FailureChanceWords.Meaning}")];
        AddOff(blocks, scores.Where(s => s.TypeGroup == chance.TypeGroup));
        if (chance.Parts.Count > 0)
        {
            blocks.Add(new Block.Table(
                $"Parts of {chance.Registration}, the most likely to fail first, as of {NumberWords.Moment(asOf)}. In brackets {NumberWords.PercentInFull(chance.Confidence)} limits",
                [new("Location"), new("Kind"), new("Last seen good, h", true), new("Age now, h", true), new("Next look, h", true), new("Chance", true)],
                [.. chance.Parts.Select(p => (Line[])
                [
                    FirstLetter.Capital(LocationWords.Name(p.Location)), FirstLetter.Capital(LocationWords.Kind(null, p.Kind)),
                    NumberWords.HoursBare(p.GoodHours), NumberWords.HoursBare(p.AgeHours), NumberWords.HoursBare(p.NextLookHours),
                    WithLimits(p.Chance, p.Lower, p.Upper),
                ])]));
        }

        if (left.Length > 0 && chance.Parts.Count > 0)
            blocks.Add(new Block.Paragraph($"Parts without a chance: {left}.", IsAside: true));
        blocks.Add(new Block.Paragraph($"Ages are hours on the part. How it is worked out: {FailureChanceWords.Method}", IsAside: true));
        return new ReportSection("chances", Heading, blocks);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        List<FailureChance> likely = [.. draft.Current.FailureChances.Where(c => c.AnyChance >= LeastAny && draft.Scope.Covers(c.Base))];
        if (likely.Count == 0) return null;
        List<Block> blocks =
        [
            new Block.Paragraph("More likely than not, a part of these aircraft fails before its next look, if parts last as their like do:"),
            new Block.Bullets([.. likely.Take(MostLines).Select(c => (Line)$"{FailureChanceWords.Statement(c)}.")]),
        ];
        AddOff(blocks, ScoresSection.InScope(draft));
        var rest = likely.Count - MostLines;
        if (draft.Inputs.PagesUrl is { } pages)
        {
            var more = rest > 0 ? $"{NumberWords.Count(rest)} more, and whether such chances came true" : "Every part, and whether such chances came true";
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link(more, new Uri(pages, "chances"))), IsAside: true));
        }
        else if (rest > 0)
        {
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(rest)} more.", IsAside: true));
        }

        return new ReportSection("chances", Heading, blocks);
    }

    // A reader of these figures has to know before he believes them.
    private static void AddOff(List<Block> blocks, IEnumerable<Score> scores)
    {
        foreach (var off in ScoreWords.ChancesOff(scores))
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Strong(FirstLetter.Capital(off)))));
    }

    private static IReadOnlyList<Line> Row(FailureChance chance) =>
    [
        AircraftLink.OnPage(chance.Registration),
        chance.Base,
        $"{NumberWords.Rounded(chance.Expected)} ({NumberWords.Rounded(chance.Lower)} to {NumberWords.Rounded(chance.Upper)})",
        NumberWords.Percent(chance.AnyChance),
        NumberWords.Count(chance.Parts.Count),
        string.Join(", ", chance.Parts.Take(MostLines).Select(p => $"{LocationWords.Name(p.Location)} {NumberWords.Percent(p.Chance)}")),
        FailureChanceWords.Left(chance),
    ];

    /// <summary>Whether the chances of the year before came true on a type group.</summary>
    internal static IEnumerable<Block> CameTrue(ChanceCalibration calibration)
    {
        yield return new Block.Paragraph(FailureChanceWords.CameTrue(calibration));
        yield return new Block.Table(
            $"{calibration.TypeGroup}: looks by the chance foreseen, in groups of equal size; where every chance is true, {NumberWords.PercentInFull(calibration.Confidence)} of "
                + "groups are within their limits",
            [new("Chance foreseen"), new("Looks", true), new("Failures foreseen", true), new("Limits", true), new("Found", true), new("Verdict")],
            [.. calibration.Groups.Select(g => (Line[])
            [
                $"{NumberWords.Percent(g.From)} to {NumberWords.Percent(g.To)}", NumberWords.Count(g.Looks), NumberWords.Rounded(g.Expected),
                $"{NumberWords.Count(g.Lower)} to {NumberWords.Count(g.Upper)}", NumberWords.Count(g.Found),
                g.IsOff ? g.Found > g.Upper ? "more than foreseen" : "fewer than foreseen" : "within",
            ])]);
    }

    private static void AddLaws(List<Block> blocks, TrendSnapshot snapshot)
    {
        var laws = snapshot.ChanceCalibrations.SelectMany(c => c.Laws.Select(l => (c.TypeGroup, Law: l))).ToList();
        if (laws.Count == 0) return;
        blocks.Add(new Block.Table(
            "Life distributions behind the chances",
            [new("Kind"), new("Type group"), new("Base"), new("Distribution"), new("Failures", true), new("Lives", true)],
            [.. laws.Select(l => (Line[])
            [
                FirstLetter.Capital(LocationWords.Kind(null, l.Law.Kind)), l.TypeGroup, l.Law.Base ?? "all others", l.Law.Distribution,
                NumberWords.Count(l.Law.Failures), NumberWords.Count(l.Law.Lives),
            ])]));
    }

    private static string WithLimits(double chance, double lower, double upper) =>
        $"{NumberWords.Percent(chance)} ({NumberWords.Percent(lower)} to {NumberWords.Percent(upper)})";
}

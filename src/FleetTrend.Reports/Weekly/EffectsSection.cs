using FleetTrend.Records.Texts;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.Effects;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>Whether what was done helped: the newest few with a verdict in a report; all of them with their counts on a page.</summary>
public static class EffectsSection
{
    private const int MostLines = 3;
    private const string Heading = "Did it help?";

    /// <summary>All effects of a snapshot with their counts, for a page.</summary>
    /// <param name="snapshot">The trends.</param>
    public static ReportSection Compose(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var asOf = $"as of {NumberWords.Moment(snapshot.AsOf)}";
        if (snapshot.Effects.Count == 0)
            return new ReportSection("effects", Heading, [new Block.Paragraph($"Nothing was recorded as done, {asOf}.")]);
        var first = snapshot.Effects[0];
        return new ReportSection("effects", Heading,
        [
            new Block.Table(
                $"What was done, before and since, {asOf}",
                [new("What was done"), new("Counted"), new("Before", true), new("Since", true), new("Since over before", true), new("Verdict")],
                [.. snapshot.Effects.Select(Row)]),
            new Block.Paragraph(
                $"In brackets: what similar aircraft, or those not touched, would give for the same looks. {EffectWords.Rules}", IsAside: true),
            new Block.Paragraph($"Since over before: {first.AfterOverBefore.Method}; {NumberWords.PercentInFull(first.AfterOverBefore.Confidence)} intervals.", IsAside: true),
        ]);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        var told = Told(draft);
        if (told.Count == 0)
            return null;
        List<Block> blocks = [new Block.Bullets([.. told.Take(MostLines).Select(e => (Line)$"{Done(e)}: {Counted(e)}. {e.Statement}")])];
        var rest = told.Count - MostLines;
        var more = rest > 0 ? $"{NumberWords.Count(rest)} more, with counts" : "The counts behind it";
        if (draft.Inputs.PagesUrl is { } pages)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link(more, new Uri(pages, "effects"))), IsAside: true));
        else if (rest > 0)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(rest)} more.", IsAside: true));
        return new ReportSection("effects", Heading, blocks);
    }

    /// <summary>Those with a verdict that a report speaks of.</summary>
    internal static IReadOnlyList<Effect> Told(ReportDraft draft) =>
    [
        .. draft.Current.Effects
            .Where(e => !e.IsTooEarly && (e.Base is not { } at || draft.Scope.Covers(at)))
            .Where(e => e.Registration is not { } registration || draft.Fleet.Any(l => l.Registration == registration)),
    ];

    /// <summary>What was done and what came of it, in a few words.</summary>
    internal static string Short(Effect effect) => $"{Done(effect)}: {EffectWords.Verdict(effect).ToLowerInvariant()} for {Counted(effect)}.";

    private static IReadOnlyList<Line> Row(Effect effect) =>
    [
        Done(effect),
        FirstLetter.Capital(Counted(effect)),
        $"{NumberWords.Count(effect.FoundBefore)} ({NumberWords.Rounded(effect.ExpectedBefore)})",
        $"{NumberWords.Count(effect.FoundAfter)} ({NumberWords.Rounded(effect.ExpectedAfter)})",
        FigureWords.Format(effect.AfterOverBefore, FigureStyle.Times).OneLine,
        EffectWords.Verdict(effect),
    ];

    private static string Done(Effect effect)
    {
        var day = NumberWords.Day(effect.ActionDate);
        var where = effect.Registration ?? effect.Base ?? $"all bases, {effect.TypeGroup}";
        return effect.What is { } what ? $"{where} since {day}, {ForeignText.Quoted(what)}" : $"{where}, acted on {day}";
    }

    private static string Counted(Effect effect) =>
        effect.Condition is { } condition ? ConditionWords.Many(condition) : $"failed {LocationWords.Plural(LocationWords.Kind(null, effect.Kind ?? "part"))}";
}

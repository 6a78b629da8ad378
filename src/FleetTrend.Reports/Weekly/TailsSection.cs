using FleetTrend.Records.Flags;
using FleetTrend.Records.Texts;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends.Chances;
using FleetTrend.Trends.Changes;
using FleetTrend.Trends.Flags;
using FleetTrend.Trends.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>Tails (and bases) to look at: a card each, most pressing first.</summary>
internal static class TailsSection
{
    private const int MostCards = 8;

    public static ReportSection Compose(ReportDraft draft)
    {
        var bySubject = draft.Flags.GroupBy(f => FlagOrder.Subject(f.Flag), StringComparer.Ordinal).ToList();
        var cards = bySubject.Where(g => g.Any(f => f.Flag.Tier == FlagTier.Flag)).ToList();
        var watched = bySubject.Except(cards).ToList();
        List<Block> blocks =
        [
            cards.Count == 0
                ? new Block.Paragraph("Nothing is flagged. That is no sign that all is well; see the cautions.")
                : new Block.Paragraph("Look at these first. Each has got worse lately, or parts do not last as long there as elsewhere.", IsAside: true),
        ];
        var told = new Dictionary<string, int>(StringComparer.Ordinal);
        blocks.AddRange(cards.Take(MostCards).Select((lines, i) => Card(draft, i + 1, [.. lines], told)));
        if (cards.Count > MostCards)
        {
            blocks.Add(new Block.SubHeading("Also flagged"));
            blocks.Add(new Block.Bullets([.. cards.Skip(MostCards).Select(lines => Short(draft, [.. lines]))]));
        }

        if (watched.Count > 0)
        {
            blocks.Add(new Block.SubHeading("Watched: less sure"));
            blocks.Add(new Block.Bullets([.. watched.Take(MostCards).Select(lines => Short(draft, [.. lines]))]));
            if (watched.Count > MostCards)
                blocks.Add(new Block.Paragraph($"And {NumberWords.Count(watched.Count - MostCards)} more on the page of flags.", IsAside: true));
        }

        return new ReportSection("tails", "Tails to look at", blocks);
    }

    // What to check is told in full once; a card after that points at the first.
    private static Block.Card Card(ReportDraft draft, int rank, IReadOnlyList<FlagLine> lines, Dictionary<string, int> told)
    {
        var flag = lines[0].Flag;
        var home = flag.Registration is null ? string.Empty : $", {flag.Base}";
        List<Block> blocks = [];
        foreach (var line in lines) blocks.AddRange(Reason(draft, line));
        var checks = lines.SelectMany(l => l.Flag.WhatToCheck.Select(w => InWords(w, l.Flag))).Distinct(StringComparer.Ordinal).ToList();
        if (checks.Count > 0)
        {
            var known = checks.Where(told.ContainsKey).Select(c => told[c]).Distinct().Order().ToList();
            var fresh = checks.Where(c => told.TryAdd(c, rank)).Select(c => (Line)c);
            blocks.Add(new Block.SubHeading("What to check"));
            blocks.Add(new Block.Bullets(known.Count == 0 ? [.. fresh] : [.. fresh, $"And as under {string.Join(" and ", known)}."]));
        }

        return new Block.Card(
            Line.Join(new Run.Strong($"{rank}. {FlagOrder.Subject(flag)}"), home), Badge(lines[0].State), blocks);
    }

    private static Line Short(ReportDraft draft, IReadOnlyList<FlagLine> lines)
    {
        var flag = lines[0].Flag;
        return Line.Join(
            new Run.Strong(FlagOrder.Subject(flag)),
            $" ({Badge(lines[0].State).ToLowerInvariant()}): {string.Join("; ", lines.Select(l => FlagHeadline.Predicate(l.Flag)))}: ",
            draft.Number(flag.Ratio, FigureStyle.Times), ".");
    }

    private static IEnumerable<Block> Reason(ReportDraft draft, FlagLine line)
    {
        // This week's numbers where the flag would be raised again; else those it was last seen with, and a word on that.
        var now = draft.Current.Flags.FirstOrDefault(f => f.Subject == line.Flag.Subject);
        var flag = now ?? line.Flag;
        yield return new Block.Paragraph(Line.Join(new Run.Strong(FirstLetter.Capital(FlagHeadline.Predicate(flag)) + ".")));
        if (flag.Change is { } change)
        {
            yield return new Block.Paragraph(flag.Statement);
            yield return new Block.Paragraph(HowSure(draft, flag, change), IsAside: true);
        }
        else
        {
            yield return new Block.Paragraph(Evidence(draft, flag));
        }

        if (flag is { Test: { } test, Family: { } family })
            yield return new Block.Paragraph($"Tested: {test}. The q-value allows for {family}.", IsAside: true);
        if (now is null)
        {
            yield return new Block.Paragraph(
                "This week's numbers alone would not raise it. The figures are those of the last time they did.", IsAside: true);
        }

        yield return new Block.Paragraph(State(draft, line), IsAside: true);
    }

    /// <summary>The figures behind a change: its ratio with its interval, the rate of false calls and what it rests on.</summary>
    private static Line HowSure(ReportDraft draft, ProposedFlag flag, Change change) => Line.Join(
        "Found over expected since: ", draft.Number(change.RatioSince, FigureStyle.Times),
        $". It began between {NumberWords.Day(change.SinceEarliestDate)} and {NumberWords.Day(change.SinceLatestDate.AddDays(27))}, with 90 % chance. "
        + $"Limits come from simulating the {(change.Registration is null ? "bases" : "aircraft")} of {flag.TypeGroup} at their own looks with nothing changing: "
        + $"chance alone raises {NumberWords.Rounded(change.FalseCallsPer50AircraftYears ?? 0)} {(flag.Tier == FlagTier.Flag ? "flags" : "watches")} per 50 aircraft-years, "
        + $"all kinds of finding together. Variance over mean of a look {NumberWords.Rounded(change.Dispersion)}; "
        + $"levels differ by {NumberWords.Percent(change.Variation)} (coefficient of variation).");

    private static Line Evidence(ReportDraft draft, ProposedFlag flag)
    {
        List<Run> runs = [];
        if (flag.Condition is { } condition)
        {
            runs.Add(ConditionWords.Count(flag.Observed, condition));
            if (flag.Expectation is { } expectation)
            {
                runs.Add($"; {Norm(flag)} would give ");
                runs.Add(draft.Number(expectation, FigureStyle.Count));
                runs.Add(" in those hours. Found over expected: ");
            }
            else if (flag.Expected is { } expected)
            {
                runs.Add($"; {Norm(flag)} would give {NumberWords.Rounded(expected)} in those hours. Found over expected: ");
            }
            else
            {
                runs.Add("; there is no other aircraft to compare with: ");
            }
        }
        else
        {
            runs.Add(flag.Contrast is { } c && flag.Ratio == c.EarlyRatio
                ? "Early failures here over those at the other bases, in like hours: "
                : "Median life here over median life at the other bases: ");
        }

        runs.Add(draft.Number(flag.Ratio, FigureStyle.Times));
        runs.Add(". ");
        if (flag.Kind == FlagKind.RepeatLocation && flag.QValue is null)
            runs.Add("Picked because it came back, not by a test; so picked, the ratio runs high.");
        if (flag is { Condition: not null, PValue: { } p })
            runs.Add($"{ChanceWords.OfCount(p)} ({ChanceWords.Named("p", p.Value, p.Law)}). ");
        if (flag.QValue is { } q)
            runs.Add(Calls(flag, q));
        if (flag.CountedAfterDate is { } closed)
            runs.Add($" Only what came after {NumberWords.Day(closed)} counts, when this was last dealt with.");
        if (flag.SinceDate is { } since) runs.Add($" First seen {NumberWords.Day(since)}.");
        return new Line(runs);
    }

    private static string Norm(ProposedFlag flag) => flag.Kind == FlagKind.RepeatLocation ? "the same spot on the others" : "similar aircraft";

    private static string Calls(ProposedFlag flag, double q)
    {
        var law = flag.PValue?.Law ?? PValueLaw.Approximate;
        var assumption = flag.Condition is null ? ChanceWords.OneLife : ChanceWords.OneRate;
        return $"{ChanceWords.OfCalls(q, law, assumption)} ({ChanceWords.Named("q", q, law)}).";
    }

    private static Line State(ReportDraft draft, FlagLine line)
    {
        var flag = line.Flag;
        var state = line.State switch
        {
            FlagLineState.New => $"New, raised {NumberWords.Day(line.RaisedDate)}.",
            FlagLineState.Open => $"Open since {NumberWords.Day(line.RaisedDate)}; nobody has acknowledged it.",
            _ => $"Raised {NumberWords.Day(line.RaisedDate)}, acknowledged{By(line)}.",
        };
        var writer = string.IsNullOrWhiteSpace(line.AcknowledgedBy) ? string.Empty : $" by {ForeignText.Quoted(line.AcknowledgedBy)}";
        var note = string.IsNullOrWhiteSpace(line.Note) ? string.Empty : $" Note{writer}: {ForeignText.Quoted(line.Note)}";
        var location = flag.Kind == FlagKind.RepeatLocation && flag.Locations.Count > 0 ? flag.Locations[0] : null;
        return draft.Evidence(flag.Registration, flag.Registration is null ? flag.TypeGroup : null, location, flag.PartKind, flag.Condition) is { } target
            ? Line.Join(state + note + " ", new Run.Link("Rows behind it", target))
            : state + note;
    }

    private static string By(FlagLine line)
    {
        var by = string.IsNullOrWhiteSpace(line.AcknowledgedBy) ? string.Empty : $" by {ForeignText.Quoted(line.AcknowledgedBy)}";
        return line.AcknowledgedDate is { } date ? $"{by} on {NumberWords.Day(date)}" : by;
    }

    private static string Badge(FlagLineState state) => state switch
    {
        FlagLineState.New => "NEW",
        FlagLineState.Open => "OPEN",
        _ => "ACKNOWLEDGED",
    };

    // In a flag of an earlier version a line about a location starts with its path; people read words.
    private static string InWords(string check, ProposedFlag flag)
    {
        var place = flag.Locations.FirstOrDefault(l => check.StartsWith(l + ":", StringComparison.Ordinal));
        return place is null ? check : FirstLetter.Capital(LocationWords.Name(place)) + check[place.Length..];
    }
}

using FleetTrend.Records.Flags;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends.OpenFindings;
using FleetTrend.Trends.PartNumbers;
using FleetTrend.Trends.Repairs;
using FleetTrend.Trends.Spares;

namespace FleetTrend.Reports.Weekly;

/// <summary>
/// What the mail says: the news and what to do about it, on one screen. Everything else stands in the report on the pages.
/// </summary>
internal static class BriefSections
{
    private const int MostPulledIn = 3;
    private const int MostChecks = 3;
    private const int MostChecksOfMany = 2;
    private const int MostLines = 3;

    /// <summary>The sections, most pressing first; what has nothing to say is absent, but for what to pull in.</summary>
    public static IReadOnlyList<ReportSection> Compose(ReportDraft draft, int newProblems, int openProblems)
    {
        ReportSection?[] sections =
        [
            SilenceSection.Compose(draft) is { } silence ? Renamed(silence, "silence") : null,
            PullIn(draft),
            Open(draft),
            Changed(draft),
            Order(draft),
            Due(draft),
            DidItWork(draft),
            Off(draft),
            Records(draft, newProblems, openProblems),
        ];
        return [.. sections.OfType<ReportSection>()];
    }

    /// <summary>The line that a mailbox shows beside the subject.</summary>
    public static string Preview(ReportDraft draft)
    {
        var aircraft = Called(draft).Select(f => f.Flag.Registration).Distinct(StringComparer.Ordinal).Count();
        List<OpenFinding> first = [.. draft.Current.OpenFindings.Where(f => f.IsFirst && draft.Scope.Covers(f.Base))];
        var overdue = draft.Current.DueLooks.Count(d => d.IsOverdue && draft.Scope.Covers(d.Base));
        return $"{(aircraft == 0 ? "Nothing" : NumberWords.Count(aircraft) + " aircraft")} to pull in; "
            + $"{NumberWords.Count(first.Count, "leak or missing piece", "leaks or missing pieces")} open; {NumberWords.Count(overdue)} aircraft past a look interval.";
    }

    private static ReportSection PullIn(ReportDraft draft)
    {
        var called = Called(draft).GroupBy(f => f.Flag.Registration!, StringComparer.Ordinal).Select(g => g.First()).ToList();
        var watched = draft.Flags.Count(f => f.Flag.Tier == FlagTier.Watch);
        List<Block> blocks = called.Count == 0 ? [new Block.Paragraph("Nothing to pull in this week. That is no sign that all is well.")] : [];
        var most = called.Count == 1 ? MostChecks : MostChecksOfMany;
        foreach (var line in called.Take(MostPulledIn))
        {
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Strong($"{FirstLetter.Capital(FlagHeadline.Format(line.Flag))}."), $" {State(line)}")));
            List<Line> checks = [.. line.Flag.WhatToCheck.Take(most)];
            if (Page(draft, $"aircraft/{Uri.EscapeDataString(line.Flag.Registration!)}") is { } page)
                checks.Add(Line.Join(new Run.Link($"Look list of {line.Flag.Registration}", page)));
            blocks.Add(new Block.Bullets(checks));
        }

        List<string> rest = [];
        if (called.Count > MostPulledIn)
            rest.Add($"{NumberWords.Count(called.Count - MostPulledIn)} more aircraft with flags");
        if (watched > 0)
            rest.Add($"{NumberWords.Count(watched, "watch", "watches")}, less sure than a flag");
        AddRest(blocks, draft, string.Join("; ", rest), "flags");
        return new ReportSection("brief-pull-in", "Pull in", blocks);
    }

    private static ReportSection? Open(ReportDraft draft)
    {
        List<OpenFinding> open = [.. draft.Current.OpenFindings.Where(f => draft.Scope.Covers(f.Base))];
        if (open.Count == 0) return null;
        List<OpenFinding> first = [.. open.Where(f => f.IsFirst)];
        List<Block> blocks = [new Block.Paragraph(OpenFindingsSection.Counted(open))];
        if (first.Count > 0)
        {
            blocks.Add(new Block.Bullets([.. first.Take(MostLines).Select(f => (Line)$"{OpenFindingWords.Statement(f)}.")]));
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Strong(string.Join(' ', OpenFindingsSection.Cautions(first))), $" {OpenFindingWords.WhoDecides}")));
        }

        AddRest(blocks, draft, first.Count > MostLines || open.Count > first.Count ? "All open findings" : "Since when, and how they grew", "open");
        return new ReportSection("brief-open", "Open now", blocks);
    }

    /// <summary>Bases where something changed or parts fail sooner than elsewhere, and part numbers that are called since the report before.</summary>
    private static ReportSection? Changed(ReportDraft draft)
    {
        List<FlagLine> bases = [.. draft.Flags.Where(f => f.Flag.Registration is null && f.Flag.Tier == FlagTier.Flag
            && f.State != FlagLineState.Acknowledged)];
        var numbers = PartNumbersSection.NewlyCalled(draft);
        List<Block> blocks = [];
        if (bases.Count > 0)
        {
            blocks.Add(new Block.Bullets([.. bases.Take(MostLines).Select(f => (Line)$"{FirstLetter.Capital(FlagHeadline.Format(f.Flag))}.")]));
            AddRest(blocks, draft, bases.Count > MostLines ? $"{NumberWords.Count(bases.Count - MostLines)} more" : "What to check", "flags");
        }

        if (numbers.Count > 0)
        {
            blocks.Add(new Block.Bullets([PartNumberWords.Headline(numbers[0])]));
            AddRest(blocks, draft, numbers.Count > 1 ? $"{NumberWords.Count(numbers.Count - 1)} more" : "Beside each other", "part-numbers");
        }

        return blocks.Count == 0 ? null : new ReportSection("brief-changed", "Changed", blocks);
    }

    private static ReportSection? Order(ReportDraft draft)
    {
        var shorts = SparesSection.ListShort(draft);
        if (shorts.Count == 0) return null;
        List<Block> blocks = [new Block.Bullets([.. shorts.Take(MostLines).Select(s => (Line)$"{SpareWords.Statement(s)}.")])];
        AddRest(blocks, draft, shorts.Count > MostLines ? $"{NumberWords.Count(shorts.Count - MostLines)} more" : "What every base will need", "spares");
        return new ReportSection("brief-order", "Order", blocks);
    }

    private static ReportSection? Due(ReportDraft draft)
    {
        var due = draft.Current.DueLooks.Where(d => draft.Scope.Covers(d.Base)).ToList();
        if (!due.Exists(d => d.IsOverdue || DueLooksSection.IsSoon(d, draft.Current.AsOf))) return null;
        List<Block> blocks = [new Block.Paragraph(DueLooksSection.Counted(due, draft.Current.AsOf))];
        AddRest(blocks, draft, "Which, and where", "due");
        return new ReportSection("brief-due", "Due", blocks);
    }

    /// <summary>What was done with its verdict, and repairs of which one is called to hold longer since the report before.</summary>
    private static ReportSection? DidItWork(ReportDraft draft)
    {
        var told = EffectsSection.Told(draft);
        var repairs = RepairsSection.NewlyCalled(draft);
        List<Block> blocks = [];
        if (told.Count > 0)
        {
            blocks.Add(new Block.Bullets([.. told.Take(MostLines).Select(e => (Line)EffectsSection.Short(e))]));
            AddRest(blocks, draft, told.Count > MostLines ? $"{NumberWords.Count(told.Count - MostLines)} more, with counts" : "The counts behind it", "effects");
        }

        if (repairs.Count > 0)
        {
            blocks.Add(new Block.Bullets([$"{FirstLetter.Capital(RepairWords.Counts(repairs[0]))}."]));
            AddRest(blocks, draft, repairs.Count > 1 ? $"{NumberWords.Count(repairs.Count - 1)} more" : "Which repairs hold", "repairs");
        }

        return blocks.Count == 0 ? null : new ReportSection("brief-effects", "Did it work?", blocks);
    }

    /// <summary>Forecasts that were off: whoever reads the figures above should know.</summary>
    private static ReportSection? Off(ReportDraft draft)
    {
        var off = ScoresSection.Off(draft);
        if (off.Count == 0) return null;
        List<Block> blocks = [new Block.Paragraph(FirstLetter.Capital(off[0]))];
        AddRest(blocks, draft, off.Count > 1 ? $"{NumberWords.Count(off.Count - 1)} more" : "How right were we?", "score");
        return new ReportSection("brief-scores", "Forecasts that were off", blocks);
    }

    private static ReportSection? Records(ReportDraft draft, int newProblems, int openProblems)
    {
        List<string> said = [];
        if (openProblems > 0)
            said.Add($"{NumberWords.Count(openProblems, "thing does", "things do")} not add up in the records{(newProblems > 0 ? $", {NumberWords.Count(newProblems)} new" : "")}.");
        if (draft.Scope.IsWholeFleet && draft.Inputs.Held is { } held && held.ByRegistration.Values.Sum() is > 0 and var count)
            said.Add($"{NumberWords.Count(count, "record is", "records are")} held.");
        if (said.Count == 0) return null;
        List<Block> blocks = [new Block.Paragraph(string.Join(' ', said))];
        AddRest(blocks, draft, "Sort them out", "data-problems");
        return new ReportSection("brief-records", "Records", blocks);
    }

    /// <summary>Aircraft that a flag names and nobody has taken on.</summary>
    private static IEnumerable<FlagLine> Called(ReportDraft draft) =>
        draft.Flags.Where(f => f.Flag.Registration is not null && f.Flag.Tier == FlagTier.Flag && f.State != FlagLineState.Acknowledged);

    private static string State(FlagLine line) =>
        line.State == FlagLineState.New ? "New." : $"Open since {NumberWords.Day(line.RaisedDate)}; nobody has answered.";

    private static ReportSection Renamed(ReportSection section, string name) => section with { Name = $"brief-{name}" };

    private static void AddRest(List<Block> blocks, ReportDraft draft, string words, string path)
    {
        if (words.Length == 0) return;
        if (Page(draft, path) is { } page)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link(words, page)), IsAside: true));
    }

    private static Uri? Page(ReportDraft draft, string path) => draft.Inputs.PagesUrl is { } pages ? new Uri(pages, path) : null;
}

using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.Silence;

namespace FleetTrend.Reports.Weekly;

/// <summary>What has stopped coming in. It is said first, since every figure below is of what came.</summary>
public static class SilenceSection
{
    private const int MostLines = 5;
    private const string Heading = "No word from";

    /// <summary>All silences of a snapshot, for a page.</summary>
    /// <param name="snapshot">The trends, with their fleet lines.</param>
    public static ReportSection Compose(TrendSnapshot snapshot) => Compose(snapshot, []);

    /// <summary>The same with sources that have stopped sending, which come first.</summary>
    /// <param name="snapshot">The trends, with their fleet lines.</param>
    /// <param name="sources">The sources.</param>
    public static ReportSection Compose(TrendSnapshot snapshot, IReadOnlyList<SilentSource> sources)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        ArgumentNullException.ThrowIfNull(sources);
        var asOf = $"as of {NumberWords.Moment(snapshot.AsOf)}";
        List<Block> blocks = snapshot.Silences.Count == 0
            ? [new Block.Paragraph($"Every aircraft that flies has sent as it used to, {asOf}.")]
            :
            [
                new Block.Paragraph($"{SilenceWords.Counted(snapshot.Silences, snapshot.Fleet.Count(l => l.RetiredDate is null))} {SilenceWords.Question}"),
                new Block.Table(
                    $"Silent aircraft, the longest first, {asOf}",
                    [new("Aircraft"), new("Base"), new("What no longer comes"), new("Last"), new("Days since", true), new("Longest before, days", true)],
                    [.. snapshot.Silences.Select(s => (IReadOnlyList<Line>)
                        [
                            s.Registration, s.Base, s.HoursStillCome ? "Inspections" : "Hours and inspections", s.LastDate is { } day ? NumberWords.Day(day) : "never",
                            NumberWords.Count(s.DaysSince), s.LongestGapDays is { } longest ? $"{NumberWords.Count(longest)}{(s.IsOwnGap ? "" : ", median of its type group")}" : "not known",
                        ])]),
            ];
        if (sources.Count > 0)
            blocks.Insert(0, new Block.Bullets([.. sources.Select(s => (Line)$"{SilenceWords.Statement(s.Source, s.Habit)}.")]));
        blocks.Add(new Block.Paragraph(SilenceWords.Rule, IsAside: true));
        return new ReportSection("silence", Heading, blocks);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        var silent = draft.Silences;
        var sources = draft.Inputs.SilentSources;
        if (silent.Count == 0 && sources.Count == 0) return null;
        List<Line> lines = [.. sources.Select(s => (Line)$"{SilenceWords.Statement(s.Source, s.Habit)}.").Take(MostLines)];
        lines.AddRange(silent.Take(MostLines).Select(s => (Line)$"{SilenceWords.Statement(s)}."));
        List<Block> blocks = [];
        if (silent.Count > 0)
            blocks.Add(new Block.Paragraph($"{SilenceWords.Counted(silent, draft.Fleet.Count)} {SilenceWords.Question}"));
        blocks.Add(new Block.Bullets(lines));
        var rest = Math.Max(0, silent.Count - MostLines);
        var more = rest > 0 ? $"{NumberWords.Count(rest)} more aircraft" : "All of them, and the rule";
        if (draft.Inputs.PagesUrl is { } pages)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link(more, new Uri(pages, "silent"))), IsAside: true));
        else if (rest > 0)
            blocks.Add(new Block.Paragraph($"{more}.", IsAside: true));
        return new ReportSection("silence", Heading, blocks);
    }
}

using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.DueLooks;

namespace FleetTrend.Reports.Weekly;

/// <summary>Which looks are due: what is past its interval in a report; every aircraft on a page.</summary>
public static class DueLooksSection
{
    private const int MostLines = 5;
    private const int MostNamed = 6;
    private const int MostRows = 75;
    private const int DaysAhead = 28;
    private const string Heading = "Due";

    /// <summary>Every aircraft of a snapshot, for a page.</summary>
    /// <param name="snapshot">The trends, with their fleet lines.</param>
    public static ReportSection Compose(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var asOf = $"as of {NumberWords.Moment(snapshot.AsOf)}";
        var due = snapshot.DueLooks;
        if (due.Count == 0)
        {
            return new ReportSection("due", Heading, [new Block.Paragraph(snapshot.Fleet.Any(l => l.RetiredDate is null)
                ? "The next refresh says what is due."
                : $"There are no aircraft that fly, {asOf}.")]);
        }

        List<Block> blocks = [new Block.Paragraph($"{Counted(due, snapshot.AsOf)} {DueLookWords.WhoseIntervals}"), Aircraft(due, snapshot.AsOf)];
        if (due.Count > MostRows)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(due.Count - MostRows)} more are due later. ListDueLooks has all of them.", IsAside: true));
        AddPassedOver(blocks, due, asOf);
        blocks.Add(new Block.Paragraph(DueLookWords.Pace, IsAside: true));
        return new ReportSection("due", Heading, blocks);
    }

    /// <summary>Every location of one aircraft, by interval and last look, for a page.</summary>
    /// <param name="due">The aircraft.</param>
    /// <param name="asOf">The moment of knowledge.</param>
    public static ReportSection Compose(DueLook due, DateTimeOffset asOf)
    {
        ArgumentNullException.ThrowIfNull(due);
        return new ReportSection("due", Heading,
        [
            new Block.Paragraph($"{DueLookWords.Statement(due)}. {DueLookWords.WhoseIntervals}"),
            new Block.Table(
                $"Locations of {due.Registration} by look interval and last look, the first due first, as of {NumberWords.Moment(asOf)}",
                [new("Locations"), new("Interval, h", true), new("Last look"), new("Hours since", true), new("Hours to next look", true), new("Since then")],
                [.. due.Groups.Select(g => (Line[])
                [
                    FirstLetter.Capital(DueLookWords.Names(g, int.MaxValue)), NumberWords.HoursBare(g.IntervalHours), Looked(g),
                    g.HoursSince is { } since ? NumberWords.HoursBare(since) : "not known", Hours(g.HoursToNext), FirstLetter.Capital(DueLookWords.Why(g)),
                ])]),
            new Block.Paragraph(DueLookWords.Pace, IsAside: true),
        ]);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        List<DueLook> due = [.. draft.Current.DueLooks.Where(d => draft.Scope.Covers(d.Base))];
        List<DueLook> overdue = [.. due.Where(d => d.IsOverdue)];
        if (overdue.Count == 0 && !due.Exists(d => IsSoon(d, draft.Current.AsOf))) return null;
        List<Block> blocks = [new Block.Paragraph(Counted(due, draft.Current.AsOf))];
        if (overdue.Count > 0)
            blocks.Add(new Block.Bullets([.. overdue.Take(MostLines).Select(d => (Line)$"{DueLookWords.Statement(d)}.")]));
        if (draft.Inputs.PagesUrl is { } pages)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link("All aircraft, with the day on which each is due", new Uri(pages, "due"))), IsAside: true));
        else if (overdue.Count > MostLines)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(overdue.Count - MostLines)} more.", IsAside: true));
        return new ReportSection("due", Heading, blocks);
    }

    // Hours are those of its latest record: by its pace it may have flown what was left.
    private static string Due(DueLook due, DateOnly today) => due switch
    {
        { IsOverdue: true } => "now",
        { DueDate: { } day } when day <= today => "now, by its pace",
        { DueDate: { } day } => NumberWords.Day(day),
        _ => "can't be told",
    };

    internal static bool IsSoon(DueLook due, DateTimeOffset asOf) => !due.IsOverdue && due.DueDate <= Soon(asOf);

    private static DateOnly Soon(DateTimeOffset asOf) => DateOnly.FromDateTime(asOf.UtcDateTime).AddDays(DaysAhead);

    internal static string Counted(IReadOnlyList<DueLook> due, DateTimeOffset asOf)
    {
        var (overdue, soon) = (due.Count(d => d.IsOverdue), due.Count(d => IsSoon(d, asOf)));
        return $"{(overdue == 0 ? "No aircraft has" : NumberWords.Count(overdue, "aircraft has", "aircraft have"))} locations past the look interval; "
            + $"{(soon == 0 ? "none" : NumberWords.Count(soon))} more {(soon is 0 or 1 ? "comes" : "come")} due by {NumberWords.Day(Soon(asOf))}.";
    }

    private static Block.Table Aircraft(IReadOnlyList<DueLook> due, DateTimeOffset asOf) => new(
        $"Aircraft, what is past its interval first, as of {NumberWords.Moment(asOf)}",
        [
            new("Aircraft"), new("Base"), new("Hours to next look", true), new("About"), new("Hours a week", true), new("Past the interval", true), new("Where first"),
        ],
        [.. due.Take(MostRows).Select(d => (Line[])
        [
            Mark(d), d.Base, Hours(d.HoursToNext), Due(d, DateOnly.FromDateTime(asOf.UtcDateTime)),
            d.HoursPerWeek is { } hours ? NumberWords.Rounded(hours) : "not known", $"{NumberWords.Count(d.OverdueCount)} of {NumberWords.Count(d.LocationCount)}",
            FirstLetter.Capital(DueLookWords.Names(d.Groups[0], 3)),
        ])]);

    /// <summary>Locations that inspections passed over, which is another matter than an aircraft that has not come in.</summary>
    private static void AddPassedOver(List<Block> blocks, IReadOnlyList<DueLook> due, string asOf)
    {
        var groups = due.SelectMany(d => d.Groups.Where(g => g.IsOverdue && g.Reason != DueReason.NoInspection).Select(g => (Due: d, Group: g)))
            .OrderBy(g => g.Group.HoursToNext).ThenBy(g => g.Due.Registration, StringComparer.Ordinal).ToList();
        if (groups.Count == 0) return;
        blocks.Add(new Block.Table(
            $"Past their interval, though the aircraft was inspected since, the furthest past first, {asOf}",
            [new("Aircraft"), new("Locations"), new("Last look"), new("Hours past", true), new("Why")],
            [.. groups.Take(MostRows).Select(g => (Line[])
            [
                Mark(g.Due), FirstLetter.Capital(DueLookWords.Names(g.Group, MostNamed)), Looked(g.Group), NumberWords.HoursBare(-g.Group.HoursToNext!.Value),
                FirstLetter.Capital(DueLookWords.Why(g.Group)),
            ])]));
        if (groups.Count > MostRows)
            blocks.Add(new Block.Paragraph($"{NumberWords.Count(groups.Count - MostRows)} more, on the pages of the aircraft.", IsAside: true));
    }

    private static Line Mark(DueLook due) =>
        AircraftLink.OnPage(due.Registration);

    private static string Looked(DueGroup group) => group.LastLookDate is { } day ? NumberWords.Day(day) : "never";

    private static string Hours(double? toNext) => toNext switch
    {
        null => "not known",
        < 0 => $"{NumberWords.HoursBare(-toNext.Value)} past",
        _ => NumberWords.HoursBare(toNext.Value),
    };
}

using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Trends;
using FleetTrend.Trends.AuthorityDrafts;
using FleetTrend.Trends.OpenFindings;

namespace FleetTrend.Reports.Weekly;

/// <summary>What is open now: leaks and missing pieces in a report, and how many others; all of them on a page.</summary>
public static class OpenFindingsSection
{
    private const int MostLines = 5;
    private const int MostRows = 200;
    private const string Heading = "Open now";

    /// <summary>All open findings of a snapshot, for a page.</summary>
    /// <param name="snapshot">The trends, with their fleet lines.</param>
    public static ReportSection Compose(TrendSnapshot snapshot)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        var asOf = $"as of {NumberWords.Moment(snapshot.AsOf)}";
        List<Block> blocks = [];
        if (snapshot.OpenFindings.Count == 0)
        {
            // Trends of an earlier version counted open findings and listed none.
            var counted = snapshot.Fleet.Where(l => l.RetiredDate is null).Sum(l => l.OpenEvents);
            blocks.Add(new Block.Paragraph(counted == 0
                ? $"No finding is open, {asOf}: each was closed by an action, or a later look found it gone. That is no evidence that an aircraft is sound."
                : $"{NumberWords.Count(counted, "finding is", "findings are")} open, {asOf}. The next refresh lists them."));
        }
        else
        {
            blocks.Add(new Block.Paragraph($"{Counted(snapshot.OpenFindings)} {OpenFindingWords.WhoDecides}"));
            AddTable(blocks, "Leaks and missing pieces", asOf, [.. snapshot.OpenFindings.Where(f => f.IsFirst)]);
            AddTable(blocks, "Other findings", asOf, [.. snapshot.OpenFindings.Where(f => !f.IsFirst)]);
            blocks.Add(new Block.Paragraph(
                "Hours are flight hours until the latest that is known. Deferred and monitored leave a finding open; any other action on it or another part closes it. "
                + "Where nothing was done, a later look that finds the location good closes it too, and is listed under data problems. "
                + "Draft: the finding may have to be reported to an authority; you judge.",
                IsAside: true));
        }

        return new ReportSection("open", Heading, blocks);
    }

    internal static ReportSection? Compose(ReportDraft draft)
    {
        List<OpenFinding> open = [.. draft.Current.OpenFindings.Where(f => draft.Scope.Covers(f.Base))];
        if (open.Count == 0) return null;
        List<OpenFinding> first = [.. open.Where(f => f.IsFirst)];
        List<Block> blocks = [new Block.Paragraph($"{Counted(open)} {string.Join(' ', Cautions(first))} {OpenFindingWords.WhoDecides}".Replace("  ", " ", StringComparison.Ordinal))];
        if (first.Count > 0)
            blocks.Add(new Block.Bullets([.. first.Take(MostLines).Select(f => (Line)$"{OpenFindingWords.Statement(f)}.")]));
        var rest = open.Count - Math.Min(first.Count, MostLines);
        var more = rest == 0 ? "Since when, and how they grew" : first.Count == 0 ? "The list" : $"{NumberWords.Count(rest)} more";
        if (draft.Inputs.PagesUrl is { } pages)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link(more, new Uri(pages, "open"))), IsAside: true));
        else if (rest > 0 && first.Count > 0)
            blocks.Add(new Block.Paragraph($"{more}.", IsAside: true));
        return new ReportSection("open", Heading, blocks);
    }

    internal static string Counted(IReadOnlyList<OpenFinding> open)
    {
        var aircraft = open.Select(f => f.Registration).Distinct(StringComparer.Ordinal).Count();
        var kinds = open.GroupBy(f => f.Condition).OrderByDescending(g => g.First().IsFirst).ThenByDescending(g => g.Count()).ThenBy(g => g.Key)
            .Select(g => ConditionWords.Count(g.Count(), g.Key));
        return $"{NumberWords.Count(open.Count, "finding is", "findings are")} open on {NumberWords.Count(aircraft)} aircraft: {string.Join(", ", kinds)}.";
    }

    internal static IEnumerable<string> Cautions(IEnumerable<OpenFinding> findings) =>
        findings.Select(OpenFindingWords.Caution).OfType<string>().Distinct(StringComparer.Ordinal);

    private static void AddTable(List<Block> blocks, string title, string asOf, IReadOnlyList<OpenFinding> findings)
    {
        if (findings.Count == 0) return;
        blocks.Add(new Block.SubHeading(title));
        if (Cautions(findings).ToList() is { Count: > 0 } cautions)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Strong(string.Join(' ', cautions)))));
        blocks.Add(new Block.Table(
            $"{title}, the longest open first, {asOf}",
            [new("Aircraft"), new("Location"), new("Condition"), new("Done about it"), new("First seen"), new("Hours since", true), new("Hours since last look", true), new("Size"), new("For the authority")],
            [.. findings.Take(MostRows).Select(Row)]));
        if (findings.Count > MostRows)
        {
            blocks.Add(new Block.Paragraph(
                $"{NumberWords.Count(findings.Count - MostRows)} more. The page of one aircraft and ListOpenFindings have all of them.", IsAside: true));
        }
    }

    private static IReadOnlyList<Line> Row(OpenFinding finding) =>
    [
        AircraftLink.OnPage(finding.Registration),
        FirstLetter.Capital(LocationWords.Name(finding.Location)),
        FirstLetter.Capital(ConditionWords.Name(finding.Condition)),
        FirstLetter.Capital(OpenFindingWords.Left(finding)),
        NumberWords.Day(finding.FoundDate) + (finding.PresentAtEntry ? ", at the first look" : ""),
        NumberWords.HoursBare(finding.HoursSinceFound),
        NumberWords.HoursBare(finding.HoursSinceLook),
        OpenFindingWords.Size(finding),
        ReportingParagraphs.For(finding.Location, finding.JascCode, finding.Condition).Count > 0
            ? AircraftLink.ToDraft(finding.Registration, finding.Evidence[0])
            : "",
    ];
}

using FleetTrend.Observations.DataProblems;
using FleetTrend.Records.Texts;
using FleetTrend.Records.Words;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>What in the records does not add up: counts by kind, the first few that nobody has closed, and what waits.</summary>
internal sealed class DataProblemsSection
{
    private const int MostRows = 8;
    private readonly ReportDraft draft;
    private readonly Dictionary<string, DataProblemLine> lines;
    private readonly List<DataProblem> open;
    private readonly List<DataProblem> closed;
    private readonly HashSet<string> known;
    private readonly HashSet<string> here;

    public DataProblemsSection(ReportDraft draft)
    {
        this.draft = draft;
        lines = draft.Inputs.DataProblems.DistinctBy(c => c.Identity, StringComparer.Ordinal).ToDictionary(c => c.Identity, StringComparer.Ordinal);
        here = draft.Current.Fleet.Where(l => draft.Scope.Covers(l.Base)).Select(l => l.Registration).ToHashSet(StringComparer.Ordinal);
        // A problem of an aircraft that the fleet table does not know belongs to the whole fleet.
        var problems = draft.Current.DataProblems.Where(IsHere).ToLookup(p => lines.GetValueOrDefault(p.Identity)?.ClosedBy is not null);
        open = [.. problems[false]];
        closed = [.. problems[true]];
        known = draft.Previous is null ? [] : [.. draft.Previous.DataProblems.Select(p => p.Identity)];
    }

    /// <summary>Open problems that the report before did not have; all of them in a first report.</summary>
    public int NewCount => open.Count(IsNew);

    /// <summary>Problems that nobody has closed.</summary>
    public int OpenCount => open.Count;

    public ReportSection? Section()
    {
        List<Block> blocks = [];
        if (open.Count + closed.Count > 0)
            blocks.Add(Kinds());
        if (open.Count > 0)
        {
            var first = open.OrderByDescending(IsNew).ThenByDescending(p => p.Date).ThenBy(p => p.Registration, StringComparer.Ordinal).Take(MostRows);
            blocks.Add(new Block.Bullets([.. first.Select(Item)]));
            if (open.Count > MostRows)
                blocks.Add(new Block.Paragraph($"The newest {MostRows} of {NumberWords.Count(open.Count)} are listed.", IsAside: true));
        }

        if (Held() is { } held)
            blocks.Add(new Block.Paragraph(held));
        if (blocks.Count == 0) return null;
        if (draft.Inputs.PagesUrl is { } pages)
            blocks.Add(new Block.Paragraph(Line.Join(new Run.Link("All data problems, with who closed which and how", new Uri(pages, "data-problems"))), IsAside: true));
        return new ReportSection("data-problems", "Data problems", blocks);
    }

    private Block.Table Kinds()
    {
        var kinds = open.Concat(closed).GroupBy(p => p.Kind).OrderByDescending(g => g.Count(IsOpen)).ThenBy(g => g.Key);
        return new Block.Table(
            $"Problems in the records by kind, {draft.AsOf}. Closed: looked at by a person, and still in the records",
            [new("Problem"), new("Open", true), new("New", true), new("Closed", true), new("Why it matters")],
            [.. kinds.Select(g => (IReadOnlyList<Line>)
                [
                    DataProblemWords.Name(g.Key), NumberWords.Count(g.Count(IsOpen)), NumberWords.Count(g.Count(p => IsOpen(p) && IsNew(p))),
                    NumberWords.Count(g.Count(p => !IsOpen(p))), DataProblemWords.Matters(g.Key),
                ])]);
    }

    private Line? Held()
    {
        if (draft.Inputs.Held is not { } held) return null;
        var marks = held.ByRegistration.Where(h => draft.Scope.IsWholeFleet || here.Contains(h.Key)).ToList();
        var count = marks.Sum(h => h.Value);
        if (count == 0) return null;
        var codes = draft.Scope.IsWholeFleet && held.UnmappedCodes > 0
            ? $" {NumberWords.Count(held.UnmappedCodes, "code of a source has", "codes of sources have")} no meaning yet."
            : string.Empty;
        return Line.Join(
            new Run.Strong($"{NumberWords.Count(count, "record is", "records are")} held"),
            $", about {NumberWords.Count(marks.Count, "registration mark", "registration marks")}, {draft.AsOf}: "
            + $"until the aircraft is registered and has the location, and every code of the source has a meaning, they take part in no number.{codes}");
    }

    private bool IsHere(DataProblem problem) =>
        draft.Scope.IsWholeFleet || here.Contains(problem.Registration) || (problem.OtherRegistration is { } other && here.Contains(other));

    private bool IsOpen(DataProblem problem) => lines.GetValueOrDefault(problem.Identity)?.ClosedBy is null;

    private bool IsNew(DataProblem problem) => !known.Contains(problem.Identity);

    private Line Item(DataProblem problem)
    {
        var keys = string.Join(", ", problem.Evidence.Take(3).Select(k => $"{k.Source} {ForeignText.Identifier(k.SourceRecordId)}"));
        var records = keys.Length == 0 ? string.Empty : $" Records: {keys}.";
        var since = lines.TryGetValue(problem.Identity, out var line) ? $" Known since {NumberWords.Day(line.SinceDate)}." : string.Empty;
        var aircraft = problem.Registration.Length == 0 ? "No aircraft known" : problem.Registration;
        var said = DataProblemWords.Description(problem.Kind, problem.Evidence, problem.Description);
        return Line.Join(new Run.Strong(aircraft), $", {NumberWords.Day(problem.Date)}: {said}{since}{records}");
    }
}

using FleetTrend.Observations.DataProblems;
using FleetTrend.Reports.Blocks;
using FleetTrend.Reports.Words;

namespace FleetTrend.Reports.Weekly;

/// <summary>What in the records does not add up: counts by kind and the first few.</summary>
internal sealed class ProblemsSection
{
    private const int MostRows = 8;
    private readonly ReportDraft draft;
    private readonly List<DataProblem> problems;
    private readonly HashSet<(DataProblemKind, string, DateOnly, string)> known;

    public ProblemsSection(ReportDraft draft)
    {
        this.draft = draft;
        var here = draft.Current.Fleet.Where(l => draft.Scope.Covers(l.Base)).Select(l => l.Registration).ToHashSet(StringComparer.Ordinal);
        // A problem of an aircraft that the fleet table does not know belongs to the whole fleet.
        problems = [.. draft.Current.Problems.Where(p => draft.Scope.Base is null || here.Contains(p.Registration))];
        known = draft.Previous is null ? [] : [.. draft.Previous.Problems.Select(Identity)];
    }

    /// <summary>Problems that the report before did not have; all of them in a first report.</summary>
    public int NewCount => problems.Count(IsNew);

    public ReportSection? Section()
    {
        if (problems.Count == 0) return null;
        var kinds = problems.GroupBy(p => p.Kind).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).ToList();
        var first = problems.OrderByDescending(IsNew).ThenByDescending(p => p.Date).ThenBy(p => p.Registration, StringComparer.Ordinal).Take(MostRows);
        List<Block> blocks =
        [
            new Block.Table(
                $"Problems in the records by kind, {draft.AsOf}",
                [new("Problem"), new("Count", true), new("New", true), new("Why it matters")],
                [.. kinds.Select(g => (IReadOnlyList<Line>)
                    [ProblemWords.Of(g.Key), NumberWords.Count(g.Count()), NumberWords.Count(g.Count(IsNew)), ProblemWords.Matters(g.Key)])]),
            new Block.Bullets([.. first.Select(Item)]),
        ];
        if (problems.Count > MostRows)
            blocks.Add(new Block.Paragraph($"The newest {MostRows} of {NumberWords.Count(problems.Count)} are listed.", IsAside: true));
        return new ReportSection("problems", "Data problems", blocks);
    }

    private bool IsNew(DataProblem problem) => !known.Contains(Identity(problem));

    private static (DataProblemKind, string, DateOnly, string) Identity(DataProblem problem) =>
        (problem.Kind, problem.Registration, problem.Date, problem.Description);

    private static Line Item(DataProblem problem)
    {
        var keys = string.Join(", ", problem.Evidence.Take(3).Select(k => $"{k.Source} {k.SourceRecordId}"));
        var records = keys.Length == 0 ? string.Empty : $" Records: {keys}.";
        return Line.Of(new Run.Strong(problem.Registration), $", {NumberWords.Day(problem.Date)}: {problem.Description}{records}");
    }
}

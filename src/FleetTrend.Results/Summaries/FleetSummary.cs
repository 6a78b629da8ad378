using FleetTrend.Observations.DataProblems;
using FleetTrend.Trends.Flags;

namespace FleetTrend.Results.Summaries;

/// <summary>What a refresh found of the fleet as a whole: kept as JSON with the published moment.</summary>
internal sealed record FleetSummary
{
    /// <summary>Which code computed it; null where stored by an earlier version.</summary>
    public Guid? Code { get; init; }

    /// <summary>What deserves attention.</summary>
    public IReadOnlyList<ProposedFlag> Flags { get; init; } = [];

    /// <summary>Problems that no single aircraft shows.</summary>
    public IReadOnlyList<DataProblem> OtherProblems { get; init; } = [];
}

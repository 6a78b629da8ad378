using FleetTrend.Records.Findings;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Timelines;

/// <summary>One look at one location on one day: an inspection that examined it, a finding there, or both.</summary>
/// <param name="Defects">Findings graded as defects; an accepted finding is none.</param>
/// <param name="Keys">The inspection and all findings of the day.</param>
internal sealed record Look(IReadOnlyList<Recorded<Finding>> Defects, IReadOnlyList<RecordKey> Keys)
{
    /// <summary>True where an inspection examined the location; false where a finding alone tells of the look.</summary>
    public required bool IsExamined { get; init; }

    /// <summary>Conditions that were seen and accepted.</summary>
    public required IReadOnlySet<Condition> Accepted { get; init; }

    /// <summary>True where no defect was found.</summary>
    public bool IsGood => Defects.Count == 0;
}

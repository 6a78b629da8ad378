namespace FleetTrend.Store.DataProblems;

/// <summary>What became of a decision.</summary>
/// <param name="State">Stored, unchanged, or why not.</param>
/// <param name="Merge">The decision that holds now; null where none does.</param>
/// <param name="Registration">The aircraft of the merged finding; null where the finding is not there.</param>
public sealed record MergeResult(MergeState State, StoredMerge? Merge = null, string? Registration = null)
{
    /// <summary>True where what was asked for holds now.</summary>
    public bool Holds => State is MergeState.Stored or MergeState.Unchanged;
}

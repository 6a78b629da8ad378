namespace FleetTrend.Store.DataProblems;

/// <summary>What became of a decision about two findings.</summary>
public enum MergeState
{
    /// <summary>It is stored.</summary>
    Stored = 1,

    /// <summary>That was the decision already.</summary>
    Unchanged = 2,

    /// <summary>The finding that would stand is not there.</summary>
    KeptNotFound = 3,

    /// <summary>The finding that would be merged, or that a merge should be undone of, is not there.</summary>
    MergedNotFound = 4,

    /// <summary>The two are of different aircraft, locations or conditions.</summary>
    NotAlike = 5,

    /// <summary>The finding that would stand is itself merged into another.</summary>
    KeptIsMerged = 6,

    /// <summary>The finding is merged into another one already.</summary>
    MergedElsewhere = 7,

    /// <summary>There is no merge to undo.</summary>
    NotMerged = 8,
}

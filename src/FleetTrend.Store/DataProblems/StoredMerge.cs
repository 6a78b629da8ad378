namespace FleetTrend.Store.DataProblems;

/// <summary>One decision about two findings; it never changes.</summary>
public sealed record StoredMerge
{
    /// <summary>Identifier; higher is newer. 0 where it was only checked.</summary>
    public required long MergeId { get; init; }

    /// <summary>The finding that stands.</summary>
    public required FindingName Kept { get; init; }

    /// <summary>The finding that counts as the same event.</summary>
    public required FindingName Merged { get; init; }

    /// <summary>True where the two are one event from then on, false where they are two again.</summary>
    public required bool IsMerged { get; init; }

    /// <summary>Who decided, as told.</summary>
    public required string DecidedBy { get; init; }

    /// <summary>Why, as told.</summary>
    public required string Note { get; init; }

    /// <summary>When (UTC); trends as of an earlier moment do not know of it.</summary>
    public required DateTimeOffset DecideTime { get; init; }
}

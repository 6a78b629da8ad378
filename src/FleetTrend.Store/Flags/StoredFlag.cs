namespace FleetTrend.Store.Flags;

/// <summary>A flag with its state.</summary>
public sealed record StoredFlag
{
    /// <summary>Identifier; higher is newer.</summary>
    public required long FlagId { get; init; }

    /// <summary>What it says, by the latest refresh that saw it.</summary>
    public required FlagProposal Proposal { get; init; }

    /// <summary>Open, acknowledged or closed.</summary>
    public required FlagState State { get; init; }

    /// <summary>As-of time of the refresh that raised it.</summary>
    public required DateTimeOffset RaiseTime { get; init; }

    /// <summary>As-of time of the latest refresh that saw it.</summary>
    public required DateTimeOffset LastSeenTime { get; init; }

    /// <summary>Who acknowledged or closed it last, as told; null while open.</summary>
    public string? AnsweredBy { get; init; }

    /// <summary>What they said; null while open.</summary>
    public string? Answer { get; init; }

    /// <summary>When they said it; null while open.</summary>
    public DateTimeOffset? AnswerTime { get; init; }
}

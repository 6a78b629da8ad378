using FleetTrend.Records.Flags;

namespace FleetTrend.Store.Flags;

/// <summary>A flag with its state.</summary>
public sealed record StoredFlag
{
    /// <summary>Identifier; higher is newer.</summary>
    public required long FlagId { get; init; }

    /// <summary>What it says, by the latest refresh that saw it.</summary>
    public required FlagProposal Proposal { get; init; }

    /// <summary>Where it stands.</summary>
    public required FlagState State { get; init; }

    /// <summary>Since when it stands there; of a step by the numbers the as-of time of the refresh.</summary>
    public required DateTimeOffset StateTime { get; init; }

    /// <summary>Grows with every step: whoever answers says which one they have seen.</summary>
    public required int Version { get; init; }

    /// <summary>Who is to see to it, as told; null for nobody.</summary>
    public string? Assignee { get; init; }

    /// <summary>The day of the newest action about it; null where nobody has acted.</summary>
    public DateOnly? ActionDate { get; init; }

    /// <summary>As-of time of the refresh that raised it.</summary>
    public required DateTimeOffset RaiseTime { get; init; }

    /// <summary>As-of time of the latest refresh that saw it.</summary>
    public required DateTimeOffset LastSeenTime { get; init; }

    /// <summary>Who answered last, as told; null where nobody has.</summary>
    public string? AnsweredBy { get; init; }

    /// <summary>What they said; null where nobody has answered.</summary>
    public string? Answer { get; init; }

    /// <summary>When they said it; null where nobody has answered.</summary>
    public DateTimeOffset? AnswerTime { get; init; }
}

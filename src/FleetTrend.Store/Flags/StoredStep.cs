using FleetTrend.Records;
using FleetTrend.Records.Flags;

namespace FleetTrend.Store.Flags;

/// <summary>A step in the life of a flag; steps are added and never changed.</summary>
public sealed record StoredStep
{
    /// <summary>Identifier; higher is later.</summary>
    public required long StepId { get; init; }

    /// <summary>Where the flag stood from then on.</summary>
    public required FlagState State { get; init; }

    /// <summary>When; of a step by the numbers the as-of time of the refresh.</summary>
    public required DateTimeOffset StepTime { get; init; }

    /// <summary>Who, as told; null where the numbers did.</summary>
    public string? By { get; init; }

    /// <summary>What they said, or why; may be empty.</summary>
    public required string Note { get; init; }

    /// <summary>The day on which something was done; null where the step says nothing of it.</summary>
    public DateOnly? ActionDate { get; init; }

    /// <summary>Time in service of the aircraft then, where told.</summary>
    public Hours? ActionTimeInService { get; init; }

    /// <summary>Who is to see to the flag from then on; null for nobody.</summary>
    public string? Assignee { get; init; }
}

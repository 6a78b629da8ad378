using FleetTrend.Records;
using FleetTrend.Records.Flags;

namespace FleetTrend.Store.Flags;

/// <summary>What a person answers to a flag.</summary>
public sealed record FlagAnswer
{
    /// <summary>The state that it leads to; null where the flag is only given to somebody.</summary>
    public FlagState? State { get; init; }

    /// <summary>Who answers, as told.</summary>
    public required string By { get; init; }

    /// <summary>What they say; may be empty.</summary>
    public string Note { get; init; } = "";

    /// <summary>The day on which something was done; only with <see cref="FlagState.ActedOn"/>.</summary>
    public DateOnly? ActionDate { get; init; }

    /// <summary>Time in service of the aircraft then, where told.</summary>
    public Hours? ActionTimeInService { get; init; }

    /// <summary>Who is to see to the flag from now on, empty for nobody; null leaves it as it is.</summary>
    public string? Assignee { get; init; }

    /// <summary>The version of the flag that they have seen; null to answer whatever it is.</summary>
    public int? Version { get; init; }
}

using FleetTrend.Trends.Flags;

namespace FleetTrend.Reports.Weekly;

/// <summary>A flag that is not closed, as the store knows it.</summary>
public sealed record FlagLine
{
    /// <summary>What it says.</summary>
    public required ProposedFlag Flag { get; init; }

    /// <summary>Where it stands.</summary>
    public required FlagLineState State { get; init; }

    /// <summary>The day it was raised.</summary>
    public required DateOnly RaisedDate { get; init; }

    /// <summary>Who acknowledged it; null where nobody has.</summary>
    public string? AcknowledgedBy { get; init; }

    /// <summary>The day it was acknowledged; null where it was not.</summary>
    public DateOnly? AcknowledgedDate { get; init; }

    /// <summary>What the person wrote; null where nothing.</summary>
    public string? Note { get; init; }
}

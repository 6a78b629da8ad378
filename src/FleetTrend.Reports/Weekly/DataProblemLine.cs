namespace FleetTrend.Reports.Weekly;

/// <summary>What the store knows of a problem in the records: since when, and whether somebody closed it.</summary>
public sealed record DataProblemLine
{
    /// <summary>Identity of the problem.</summary>
    public required string Identity { get; init; }

    /// <summary>The day it was seen first (UTC).</summary>
    public required DateOnly SinceDate { get; init; }

    /// <summary>Who closed it; null while it is open.</summary>
    public string? ClosedBy { get; init; }
}

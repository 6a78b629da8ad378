namespace FleetTrend.Trends.BackTests;

/// <summary>
/// The past of a type group replayed by the dates of its records: the watches and flags that would have come, beside the alert levels of
/// reliability-programme practice on the same findings. It says when and how often, and nothing about which were right.
/// </summary>
public sealed record BackTest
{
    /// <summary>The type group.</summary>
    public required string TypeGroup { get; init; }

    /// <summary>The first day counted.</summary>
    public required DateOnly FirstDate { get; init; }

    /// <summary>The last day counted.</summary>
    public required DateOnly LastDate { get; init; }

    /// <summary>Years between first and last look, all aircraft added up, in those days.</summary>
    public required double AircraftYears { get; init; }

    /// <summary>Watch and flag, then every alert level.</summary>
    public required IReadOnlyList<BackTestMethod> Methods { get; init; }

    /// <summary>Watches and flags, newest first.</summary>
    public required IReadOnlyList<BackTestCall> Calls { get; init; }

    /// <summary>Calls of the alert levels, newest first; empty where they were not asked for.</summary>
    public IReadOnlyList<BackTestCall> AlertCalls { get; init; } = [];
}

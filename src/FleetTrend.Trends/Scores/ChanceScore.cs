using System.Text.Json.Serialization;
using FleetTrend.Trends.FailureChances;

namespace FleetTrend.Trends.Scores;

/// <summary>Chances before the next look, held against what the looks of a time found.</summary>
public sealed record ChanceScore
{
    /// <summary>The first day whose looks count.</summary>
    public required DateOnly FromDate { get; init; }

    /// <summary>Looks at parts that were good, by kinds that had a chance then.</summary>
    public required int Looks { get; init; }

    /// <summary>Failures foreseen at these looks.</summary>
    public required double Expected { get; init; }

    /// <summary>Failures found at them.</summary>
    public required int Found { get; init; }

    /// <summary>Fewest that the chances leave open.</summary>
    public required int Lower { get; init; }

    /// <summary>Most that the chances leave open.</summary>
    public required int Upper { get; init; }

    /// <summary>The looks in groups of equal size, the smallest chances first; empty where there are too few.</summary>
    public required IReadOnlyList<ChanceGroup> Groups { get; init; }

    /// <summary>
    /// Whether the chances were out of their stated error. Judged of two quarters together once the second is over; null where they were not judged.
    /// </summary>
    public bool? IsOff { get; init; }

    /// <summary>Whether what was found lies outside of what the chances leave open, as one look of 20 does by chance.</summary>
    [JsonIgnore]
    public bool IsOutside => Found < Lower || Found > Upper;
}

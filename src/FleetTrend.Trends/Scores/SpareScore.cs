using System.Text.Json.Serialization;

namespace FleetTrend.Trends.Scores;

/// <summary>Forecasts of spares held against what was then needed.</summary>
public sealed record SpareScore
{
    /// <summary>The first day on which a forecast was kept.</summary>
    public required DateOnly KeptDate { get; init; }

    /// <summary>By days ahead, ascending; those whose days are over. Empty where none are.</summary>
    public required IReadOnlyList<SpareHorizonScore> Horizons { get; init; }

    /// <summary>Days ahead of the horizon that is judged: the one nearest to a quarter.</summary>
    public required int JudgedDays { get; init; }

    /// <summary>
    /// Whether the forecasts were out of their stated error. Judged of two quarters together once the second is over; null where they were not judged.
    /// </summary>
    public bool? IsOff { get; init; }

    /// <summary>The horizon that is judged; null while its days are not over.</summary>
    [JsonIgnore]
    public SpareHorizonScore? Judged => Horizons.FirstOrDefault(h => h.Days == JudgedDays);
}

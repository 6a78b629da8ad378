using System.Text.Json.Serialization;

namespace FleetTrend.Trends.Scores;

/// <summary>Forecasts of spares for some days ahead, held against what was then needed.</summary>
public sealed record SpareHorizonScore
{
    /// <summary>The days.</summary>
    public required int Days { get; init; }

    /// <summary>Forecasts, one per base and part number, or kind where no number was known.</summary>
    public required int Forecasts { get; init; }

    /// <summary>Those whose prediction interval held what was needed.</summary>
    public required int Held { get; init; }

    /// <summary>Forecasts beside them that said "at least" and are not scored.</summary>
    public required int AtLeast { get; init; }

    /// <summary>Parts that were to be needed, in the mean.</summary>
    public required double Expected { get; init; }

    /// <summary>Parts that were needed.</summary>
    public required int Needed { get; init; }

    /// <summary>Fewest in all that the forecasts leave open.</summary>
    public required int Lower { get; init; }

    /// <summary>Most in all that they leave open.</summary>
    public required int Upper { get; init; }

    /// <summary>Whether what was needed in all lies outside of what the forecasts leave open.</summary>
    [JsonIgnore]
    public bool IsOutside => Needed < Lower || Needed > Upper;
}

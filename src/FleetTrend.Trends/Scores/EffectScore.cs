using System.Text.Json.Serialization;

namespace FleetTrend.Trends.Scores;

/// <summary>Actions on flags that were found to have helped in a quarter, and whether that lasted until now.</summary>
/// <param name="Helped">Flags whose action was found to have helped.</param>
/// <param name="CameBack">Of them, those that were reopened or whose subject was flagged again since.</param>
public sealed record EffectScore(int Helped, int CameBack)
{
    /// <summary>Those where nothing came back until now.</summary>
    [JsonIgnore]
    public int Lasted => Helped - CameBack;
}

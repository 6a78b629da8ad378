using FleetTrend.Trends.Spares;

namespace FleetTrend.Trends.Scores;

/// <summary>How many parts were to be needed within some days.</summary>
/// <param name="Days">The days.</param>
/// <param name="Mean">How many, in the mean.</param>
/// <param name="Variance">Variance of the number, by the forecast.</param>
/// <param name="Lower">Fewest of the prediction interval.</param>
/// <param name="Upper">Most of it.</param>
public sealed record KeptHorizon(int Days, double Mean, double Variance, int Lower, int Upper)
{
    private const int Digits = 6;

    /// <summary>That of a need.</summary>
    internal static KeptHorizon Of(SpareNeed need, SpareHorizon horizon)
    {
        var interval = need.IntervalOf(horizon);
        var variance = horizon.Chances.Select((chance, i) => chance * Math.Pow(horizon.First + i - horizon.Mean, 2)).Sum();
        return new KeptHorizon(horizon.Days, Math.Round(horizon.Mean, Digits), Math.Round(variance, Digits), (int)interval.Lower, (int)interval.Upper);
    }
}

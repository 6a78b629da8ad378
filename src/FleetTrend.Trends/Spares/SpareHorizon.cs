using System.Text.Json.Serialization;
using FleetTrend.Statistics.Decisions;

namespace FleetTrend.Trends.Spares;

/// <summary>Chances of how many parts will be needed within some days.</summary>
public sealed record SpareHorizon
{
    // Rarer numbers change no figure that is shown.
    private const double Rare = 1e-8;
    private const int Digits = 9;

    /// <summary>The days.</summary>
    public required int Days { get; init; }

    /// <summary>How many will be needed, in the mean.</summary>
    public required double Mean { get; init; }

    /// <summary>The number that the first of <see cref="Chances"/> belongs to.</summary>
    public required int First { get; init; }

    /// <summary>Chances of <see cref="First"/>, of one more, and so on; what is rarer is left out.</summary>
    public required IReadOnlyList<double> Chances { get; init; }

    /// <summary>The whole forecast.</summary>
    [JsonIgnore]
    public DemandForecast Forecast => DemandForecast.FromChances([.. new double[First], .. Chances]);

    /// <summary>That of a forecast.</summary>
    /// <param name="days">The days.</param>
    /// <param name="forecast">The forecast.</param>
    public static SpareHorizon From(int days, DemandForecast forecast)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        var (first, last) = (0, forecast.Chances.Count - 1);
        while (first < last && forecast.Chances[first] < Rare)
            first++;
        while (last > first && forecast.Chances[last] < Rare)
            last--;
        return new SpareHorizon
        {
            Days = days,
            Mean = Math.Round(forecast.Mean, Digits),
            First = first,
            Chances = [.. forecast.Chances.Skip(first).Take(last - first + 1).Select(c => Math.Round(c, Digits))],
        };
    }
}

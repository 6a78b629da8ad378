using FleetTrend.Observations;

namespace FleetTrend.Trends;

/// <summary>Computes what the fleet is doing from the observations of its aircraft.</summary>
public static class FleetTrends
{
    /// <summary>Trends as of a moment. The same observations, parameters and moment give the same snapshot.</summary>
    /// <param name="observations">One entry per aircraft, in any order.</param>
    /// <param name="parameters">The choices.</param>
    /// <param name="asOf">The moment of knowledge (UTC).</param>
    /// <param name="codeVersion">Version of the code, stored for the record.</param>
    public static TrendSnapshot Compute(
        IReadOnlyList<AircraftObservations> observations, TrendParameters parameters, DateTimeOffset asOf, string codeVersion)
    {
        ArgumentNullException.ThrowIfNull(observations);
        return new TrendSnapshot
        {
            AsOf = asOf,
            Parameters = parameters,
            CodeVersion = codeVersion,
            Fleet = [],
            Rates = [],
            Recurrences = [],
            Repeats = [],
            PartLives = [],
            Airframes = [],
            Flags = [],
            Problems = [.. observations.SelectMany(o => o.Problems)],
        };
    }
}

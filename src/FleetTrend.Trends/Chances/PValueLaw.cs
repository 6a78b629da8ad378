namespace FleetTrend.Trends.Chances;

/// <summary>How far down a p-value can be trusted.</summary>
public enum PValueLaw
{
    /// <summary>The law of the statistic is known exactly under the test's assumption, down to the smallest chance.</summary>
    Exact = 1,

    /// <summary>From a law that the statistic follows nearly: its small chances are rough, and smaller than 1 in 1,000 nobody should quote.</summary>
    Approximate = 2,
}

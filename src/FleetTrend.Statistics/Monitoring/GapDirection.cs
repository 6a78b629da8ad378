namespace FleetTrend.Statistics.Monitoring;

/// <summary>What a sum of gaps between events watches for.</summary>
public enum GapDirection
{
    /// <summary>Shorter gaps, that is more events: adds reference value less gap.</summary>
    Shorter,

    /// <summary>Longer gaps, that is fewer events: adds gap less reference value.</summary>
    Longer,
}

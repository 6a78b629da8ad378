namespace FleetTrend.Statistics.Recurrences;

/// <summary>What ended the observation of a repairable unit.</summary>
public enum Truncation
{
    /// <summary>A time fixed beforehand or by something else than the events.</summary>
    Time,

    /// <summary>The last event itself: it carries no information on the trend.</summary>
    Event,
}

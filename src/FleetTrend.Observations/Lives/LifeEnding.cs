namespace FleetTrend.Observations.Lives;

/// <summary>How a life ended.</summary>
public enum LifeEnding
{
    /// <summary>Still there and not found failed.</summary>
    InService = 1,

    /// <summary>Found failed.</summary>
    Failed = 2,

    /// <summary>Taken out for another reason than failure: right-censored.</summary>
    RemovedGood = 3,

    /// <summary>The aircraft left the fleet.</summary>
    AircraftRetired = 4,
}

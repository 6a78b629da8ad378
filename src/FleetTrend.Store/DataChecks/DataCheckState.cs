namespace FleetTrend.Store.DataChecks;

/// <summary>State of a data check.</summary>
public enum DataCheckState
{
    /// <summary>The records still say so, and nobody has closed it.</summary>
    Open = 1,

    /// <summary>Somebody has looked at it and closed it; the records may still say so.</summary>
    Closed = 2,

    /// <summary>It ended by itself: the records do not say so any more.</summary>
    Gone = 3,
}

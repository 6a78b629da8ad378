namespace FleetTrend.Reports.Weekly;

/// <summary>Where a flag stands when a report is written.</summary>
public enum FlagLineState
{
    /// <summary>Raised since the report before this one.</summary>
    New = 1,

    /// <summary>Raised earlier, and nobody has acknowledged it.</summary>
    Open = 2,

    /// <summary>Somebody has acknowledged it, and it is not closed.</summary>
    Acknowledged = 3,
}

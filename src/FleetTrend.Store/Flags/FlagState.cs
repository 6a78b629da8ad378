namespace FleetTrend.Store.Flags;

/// <summary>State of a flag.</summary>
public enum FlagState
{
    /// <summary>Raised; nobody has answered.</summary>
    Open = 1,

    /// <summary>Somebody has seen it.</summary>
    Acknowledged = 2,

    /// <summary>Done.</summary>
    Closed = 3,
}

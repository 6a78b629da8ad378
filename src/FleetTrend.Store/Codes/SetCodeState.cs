namespace FleetTrend.Store.Codes;

/// <summary>What became of a code that was to get a meaning.</summary>
public enum SetCodeState
{
    /// <summary>It has that meaning, now or from before.</summary>
    Stored = 1,

    /// <summary>Refused: the source is not registered.</summary>
    SourceUnknown = 2,

    /// <summary>Refused: no layout has the location.</summary>
    LocationUnknown = 3,
}

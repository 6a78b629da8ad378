namespace FleetTrend.Records.Flags;

/// <summary>Where a flag stands in its life. The numbers are stored, and are those of the contract.</summary>
public enum FlagState
{
    /// <summary>Raised at the strength of a flag; nobody has answered.</summary>
    Open = 1,

    /// <summary>Somebody has seen it.</summary>
    Acknowledged = 2,

    /// <summary>A person has closed it, as corrected or as a false alarm.</summary>
    Closed = 3,

    /// <summary>Raised at the strength of a watch; nobody has answered.</summary>
    Watch = 4,

    /// <summary>Something was done about it; what comes after that day counts.</summary>
    ActedOn = 5,

    /// <summary>What was done helped, by what came after; settled.</summary>
    Helped = 6,

    /// <summary>What was done did not help, by what came after.</summary>
    NoBetter = 7,

    /// <summary>A person has taken its closing, or the verdict that it helped, back.</summary>
    Reopened = 8,
}

namespace FleetTrend.Records.Findings;

/// <summary>Colour of a leak trace.</summary>
public enum TraceColour
{
    /// <summary>Not told, or not a leak trace.</summary>
    Unspecified = 0,

    /// <summary>Grey or grey-white powder: exhaust.</summary>
    Grey = 1,

    /// <summary>Rose or reddish: exhaust.</summary>
    Rose = 2,

    /// <summary>Yellow or orange powder: exhaust.</summary>
    Yellow = 3,

    /// <summary>Black soot: exhaust.</summary>
    Soot = 4,

    /// <summary>Blue: fuel, on the induction side.</summary>
    Blue = 5,

    /// <summary>Another colour.</summary>
    Other = 6,
}

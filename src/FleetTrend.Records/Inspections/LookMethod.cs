namespace FleetTrend.Records.Inspections;

/// <summary>How a location was looked at.</summary>
public enum LookMethod
{
    /// <summary>Not told.</summary>
    Unspecified = 0,

    /// <summary>By eye, with a light and a mirror.</summary>
    Visual = 1,

    /// <summary>By eye with the covering part taken off.</summary>
    VisualDisassembled = 2,

    /// <summary>With a borescope.</summary>
    Borescope = 3,

    /// <summary>Air pressure and a leak-finding fluid.</summary>
    PressureTest = 4,

    /// <summary>Dye penetrant.</summary>
    DyePenetrant = 5,

    /// <summary>By hand: shaken, pulled, or with a torque wrench.</summary>
    Touch = 6,

    /// <summary>Another way.</summary>
    Other = 7,
}

namespace FleetTrend.Records.Findings;

/// <summary>A condition seen at a location.</summary>
public enum Condition
{
    /// <summary>A crack, in a weld or in the metal beside it.</summary>
    Crack = 1,

    /// <summary>A trace that a leak left.</summary>
    LeakTrace = 2,

    /// <summary>Metal carried away by hot gas.</summary>
    Erosion = 3,

    /// <summary>Rust, scale, pitting.</summary>
    Corrosion = 4,

    /// <summary>Loose, under-torqued, moving where it should not.</summary>
    Looseness = 5,

    /// <summary>A piece is not there.</summary>
    MissingPiece = 6,

    /// <summary>Bent, folded, bulged, blown.</summary>
    Distortion = 7,

    /// <summary>Worn or chafed.</summary>
    Wear = 8,

    /// <summary>Rubber gone hard.</summary>
    Hardening = 9,

    /// <summary>Anything else.</summary>
    Other = 10,
}

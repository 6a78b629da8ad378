namespace FleetTrend.Store.Fleet;

/// <summary>What a name is of.</summary>
public enum NameKind
{
    /// <summary>Registration mark of an aircraft.</summary>
    Aircraft,

    /// <summary>Registration mark of an aircraft, or of one that held records wait for.</summary>
    HeldAircraft,

    /// <summary>Type group.</summary>
    TypeGroup,

    /// <summary>Kind of location.</summary>
    LocationKind,

    /// <summary>Path of a location of any layout.</summary>
    Location,

    /// <summary>Base of an aircraft, now or earlier.</summary>
    Base,

    /// <summary>Source of records.</summary>
    Source,
}

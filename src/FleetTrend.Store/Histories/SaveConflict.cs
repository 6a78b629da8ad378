namespace FleetTrend.Store.Histories;

/// <summary>Why a record cannot stand beside what is stored.</summary>
public enum SaveConflict
{
    /// <summary>The key was used before with other content.</summary>
    RevisionReused = 1,

    /// <summary>The source is not registered.</summary>
    SourceUnknown = 4,

    /// <summary>The aircraft is not registered.</summary>
    AircraftUnknown = 5,

    /// <summary>No layout has this location.</summary>
    LocationUnknown = 6,

    /// <summary>The type group of an assignment is not registered.</summary>
    TypeGroupUnknown = 7,
}

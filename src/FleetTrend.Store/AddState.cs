namespace FleetTrend.Store;

/// <summary>What became of something that was to be added under a name.</summary>
public enum AddState
{
    /// <summary>It is stored now.</summary>
    Added = 1,

    /// <summary>The very same was there before; nothing was written.</summary>
    Unchanged = 2,

    /// <summary>Refused: another one has this name.</summary>
    NameInUse = 3,

    /// <summary>Refused: a location path has another kind in an earlier layout.</summary>
    PathHasOtherKind = 4,

    /// <summary>Refused: there is no layout of that name.</summary>
    LayoutUnknown = 5,
}

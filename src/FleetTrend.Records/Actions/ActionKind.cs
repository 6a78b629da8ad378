namespace FleetTrend.Records.Actions;

/// <summary>What was done about a finding.</summary>
public enum ActionKind
{
    /// <summary>A hole at the crack's end. Keeps the life.</summary>
    StopDrilled = 1,

    /// <summary>Welded. Keeps the life.</summary>
    WeldRepaired = 2,

    /// <summary>Another part went in. Starts a new life.</summary>
    Replaced = 3,

    /// <summary>Tightened to the maker's value. Keeps the life.</summary>
    Retorqued = 4,

    /// <summary>A face was made flat again. Keeps the life.</summary>
    Resurfaced = 5,

    /// <summary>Cleaned. Keeps the life.</summary>
    Cleaned = 6,

    /// <summary>Moved, aligned, re-hung. Keeps the life.</summary>
    Adjusted = 7,

    /// <summary>Put off: the event stays open.</summary>
    Deferred = 8,

    /// <summary>Watched: the event stays open.</summary>
    Monitored = 9,

    /// <summary>A joint that must slide was freed and greased. Keeps the life.</summary>
    Lubricated = 10,
}

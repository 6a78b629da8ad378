namespace FleetTrend.Store.Parameters;

/// <summary>Whether a change of the parameters was stored.</summary>
public enum ParameterChangeState
{
    /// <summary>It is in force.</summary>
    Stored = 1,

    /// <summary>The same values were in force already.</summary>
    Unchanged = 2,

    /// <summary>Not stored: another change came first.</summary>
    ChangedMeanwhile = 3,
}

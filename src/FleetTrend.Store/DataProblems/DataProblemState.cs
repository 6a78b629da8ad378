namespace FleetTrend.Store.DataProblems;

/// <summary>State of a data problem.</summary>
public enum DataProblemState
{
    /// <summary>The records still say so, and nobody has closed it.</summary>
    Open = 1,

    /// <summary>Somebody has looked at it and closed it; the records may still say so.</summary>
    Closed = 2,

    /// <summary>It ended by itself: the records do not say so any more.</summary>
    Gone = 3,
}

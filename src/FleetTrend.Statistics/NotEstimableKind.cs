namespace FleetTrend.Statistics;

/// <summary>The reasons for which an estimate does not exist.</summary>
public enum NotEstimableKind
{
    /// <summary>No unit was ever under observation: no lives, no windows, no exposure.</summary>
    NothingObserved,

    /// <summary>Units were observed and none had an event; an upper limit may still exist.</summary>
    NoEvents,

    /// <summary>Fewer events than the method needs.</summary>
    TooFewEvents,

    /// <summary>
    /// The likelihood rises without end towards an edge of the parameters (all events in one interval, all tied, all ages
    /// below every look), so that no finite maximum exists.
    /// </summary>
    NoFiniteMaximum,

    /// <summary>The data say nothing about this quantity: the likelihood is flat in it, or the age lies beyond all observation.</summary>
    NoInformation,

    /// <summary>The estimate lies on the edge of its range, where this interval or test is not defined.</summary>
    OnBoundary,

    /// <summary>The iteration limit was reached before the stated accuracy.</summary>
    DidNotConverge,
}

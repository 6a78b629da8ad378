namespace FleetTrend.Store.Flags;

/// <summary>What became of an answer to a flag.</summary>
public enum AnswerState
{
    /// <summary>Taken.</summary>
    Taken = 1,

    /// <summary>The very same answer was the last one; nothing was written.</summary>
    Unchanged = 2,

    /// <summary>Somebody, or a refresh, took another step meanwhile.</summary>
    StepBetween = 3,

    /// <summary>No such step leads on from where the flag stands.</summary>
    NotFrom = 4,

    /// <summary>A newer flag about the same is there, so that this one can't be reopened.</summary>
    NewerIsOpen = 5,
}

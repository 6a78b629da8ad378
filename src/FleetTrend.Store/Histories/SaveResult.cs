namespace FleetTrend.Store.Histories;

/// <summary>What became of a record that was to be stored: <see cref="Accepted"/>, <see cref="Unchanged"/>, <see cref="Held"/> or <see cref="Conflict"/>.</summary>
public abstract record SaveResult
{
    private SaveResult()
    {
    }

    /// <summary>It is stored and will survive a crash.</summary>
    /// <param name="AcceptTime">When it was accepted (UTC, microseconds).</param>
    public sealed record Accepted(DateTimeOffset AcceptTime) : SaveResult;

    /// <summary>The very same record was there; nothing was written.</summary>
    /// <param name="AcceptTime">When it was accepted the first time (UTC, microseconds).</param>
    public sealed record Unchanged(DateTimeOffset AcceptTime) : SaveResult;

    /// <summary>It waits, and will survive a crash; no history has it.</summary>
    /// <param name="HoldTime">Since when it waits (UTC, microseconds).</param>
    /// <param name="IsNew">False where it waited before.</param>
    public sealed record Held(DateTimeOffset HoldTime, bool IsNew) : SaveResult;

    /// <summary>Nothing of it was written.</summary>
    /// <param name="Reason">Why.</param>
    /// <param name="Value">The value that clashes: the revision, the source, aircraft, location or type group.</param>
    public sealed record Conflict(SaveConflict Reason, string Value) : SaveResult;
}

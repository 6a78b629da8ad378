namespace FleetTrend.Store.Requests;

/// <summary>How far a request for reports is.</summary>
public enum ReportRequestState
{
    /// <summary>No worker has begun.</summary>
    Queued = 1,

    /// <summary>A worker has begun; one that was killed is taken over, and a failed attempt is made again.</summary>
    Running = 2,

    /// <summary>The reports are there.</summary>
    Done = 3,

    /// <summary>Every attempt failed.</summary>
    Failed = 4,
}

namespace FleetTrend.Store.Requests;

/// <summary>Which refresh answers a request.</summary>
public enum AskedRefreshState
{
    /// <summary>The next one; nobody else has asked for it.</summary>
    Queued = 1,

    /// <summary>The next one, which somebody else has asked for too.</summary>
    Joined = 2,

    /// <summary>One is running that began before; one more follows it.</summary>
    AfterRunning = 3,
}

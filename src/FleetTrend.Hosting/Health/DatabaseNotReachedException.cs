namespace FleetTrend.Hosting.Health;

/// <summary>The given database did not answer in time, or refused. The message says what is wrong and what to do; it holds no secret.</summary>
public sealed class DatabaseNotReachedException : Exception
{
    /// <summary>A failure described by <paramref name="message"/>, full sentences for the operator.</summary>
    public DatabaseNotReachedException(string message, Exception inner) : base(message, inner) { }

    /// <summary>Required by the exception conventions.</summary>
    public DatabaseNotReachedException(string message) : base(message) { }

    /// <summary>Required by the exception conventions.</summary>
    public DatabaseNotReachedException() { }
}

namespace FleetTrend.Hosting.LocalPostgres;

/// <summary>The local PostgreSQL could not be made ready. The message says what is wrong and what to do.</summary>
public sealed class LocalPostgresException : Exception
{
    /// <summary>A failure described by <paramref name="message"/>, a full sentence for the person at the console.</summary>
    public LocalPostgresException(string message) : base(message) { }

    /// <summary>A failure with its cause.</summary>
    public LocalPostgresException(string message, Exception inner) : base(message, inner) { }

    /// <summary>Required by the exception conventions.</summary>
    public LocalPostgresException() { }
}

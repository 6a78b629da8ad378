namespace FleetTrend.Hosting.LocalPostgres;

/// <summary>Where the product keeps the PostgreSQL cluster that it runs for itself, and how long it may wait.</summary>
public sealed record LocalPostgresOptions
{
    /// <summary>The product's data folder, absolute or relative to the working folder. Created when absent; the
    /// cluster lives in a folder <c>postgres</c> below it.</summary>
    public required string DataFolder { get; init; }

    /// <summary>How long to wait for the server to accept connections, crash recovery included.</summary>
    public TimeSpan StartTimeout { get; init; } = TimeSpan.FromMinutes(5);

    /// <summary>Folders searched for <c>initdb</c>, <c>pg_ctl</c> and <c>postgres</c>; null searches the PATH and
    /// the folders in which Linux distributions install them.</summary>
    public IReadOnlyList<string>? BinaryFolders { get; init; }
}
